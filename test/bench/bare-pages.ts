/**
 * The plain baseline of printing: a loop over pages that were planned before, each drawn at once
 * with the operators of the library, without layers and without sharing anything.
 */
import type { PDFOperator } from 'pdf-lib';
import {
  PDFDocument,
  StandardFonts,
  appendBezierCurve,
  clip,
  closePath,
  concatTransformationMatrix,
  endPath,
  fill,
  lineTo,
  moveTo,
  popGraphicsState,
  pushGraphicsState,
  rectangle,
  rgb,
  setDashPattern,
  setLineWidth,
  setStrokingRgbColor,
  stroke,
} from 'pdf-lib';
import type { Box } from '../../src/geometry/bounds';
import { boxesOverlap } from '../../src/geometry/bounds';
import type { Point } from '../../src/geometry/point';
import { add, point } from '../../src/geometry/point';
import { shapeBox } from '../../src/render/shape-box';
import type { PathShape, Shape, TextShape } from '../../src/render/scene';
import type { PdfPage } from '../../src/render/pdf';

interface Mark {
  readonly shape: PathShape | TextShape;
  readonly at: Point;
}

/** A page as the loop wants it: what to draw where, and through which window. */
export interface BarePage {
  readonly width: number;
  readonly height: number;
  readonly marks: readonly Mark[];
  readonly window: Box | undefined;
  readonly windowMarks: readonly Mark[];
}

/** The same pages, each with the shapes that reach it. */
export function barePages(pages: readonly PdfPage[]): readonly BarePage[] {
  return pages.map(({ scene, windows }) => {
    const [first] = windows;
    const { width, height } = scene;
    const marks = marksOf(scene.shapes, point(0, 0));
    if (first === undefined) return { width, height, marks, window: undefined, windowMarks: [] };
    const { part, at, drawing } = first;
    const window = {
      left: at.x,
      top: at.y,
      right: at.x + part.right - part.left,
      bottom: at.y + part.bottom - part.top,
    };
    const windowMarks = marksOf(drawing, point(at.x - part.left, at.y - part.top)).filter(
      ({ shape, at: zero }) => {
        const box = shapeBox({ kind: 'group', offset: zero, children: [shape] });
        return boxesOverlap(box, window);
      },
    );
    return { width, height, marks, window, windowMarks };
  });
}

function marksOf(shapes: readonly Shape[], zero: Point): readonly Mark[] {
  return shapes.flatMap((shape): readonly Mark[] =>
    shape.kind === 'group'
      ? marksOf(shape.children, add(zero, shape.offset ?? point(0, 0)))
      : [{ shape, at: zero }],
  );
}

const POINTS = 72 / 25.4;

export async function writeBare(pages: readonly BarePage[]): Promise<Uint8Array> {
  const document = await PDFDocument.create();
  const font = await document.embedFont(StandardFonts.Helvetica);
  for (const { width, height, marks, window, windowMarks } of pages) {
    const page = document.addPage([width * POINTS, height * POINTS]);
    const draw = (all: readonly Mark[]): void => {
      for (const { shape, at } of all) {
        if (shape.kind === 'text') {
          const x = (shape.at.x + at.x) * POINTS;
          const y = (height - shape.at.y - at.y) * POINTS;
          page.drawText(shape.words, {
            x,
            y,
            size: shape.size * POINTS,
            font,
            color: rgb(0, 0, 0),
          });
        } else {
          page.pushOperators(
            pushGraphicsState(),
            concatTransformationMatrix(POINTS, 0, 0, -POINTS, 0, height * POINTS),
            ...pathOperators(shape, at),
            popGraphicsState(),
          );
        }
      }
    };
    draw(marks);
    if (window !== undefined) {
      page.pushOperators(
        pushGraphicsState(),
        rectangle(
          window.left * POINTS,
          (height - window.bottom) * POINTS,
          (window.right - window.left) * POINTS,
          (window.bottom - window.top) * POINTS,
        ),
        clip(),
        endPath(),
      );
      draw(windowMarks);
      page.pushOperators(popGraphicsState());
    }
  }
  return document.save();
}

function pathOperators(path: PathShape, at: Point): readonly PDFOperator[] {
  const { segments, closed, stroke: line } = path;
  const operators: PDFOperator[] = [];
  if (line !== undefined) {
    const [r = 0, g = 0, b = 0] = [1, 3, 5].map(
      (i) => parseInt(line.color.slice(i, i + 2), 16) / 255,
    );
    operators.push(
      setStrokingRgbColor(r, g, b),
      setLineWidth(line.width),
      setDashPattern([...(line.dash ?? [])], 0),
    );
  }
  let pen: Point | undefined;
  for (const segment of segments) {
    const { from, to } = segment;
    if (pen?.x !== from.x || pen.y !== from.y) operators.push(moveTo(from.x + at.x, from.y + at.y));
    pen = to;
    operators.push(
      segment.kind === 'line'
        ? lineTo(to.x + at.x, to.y + at.y)
        : appendBezierCurve(
            segment.leave.x + at.x,
            segment.leave.y + at.y,
            segment.arrive.x + at.x,
            segment.arrive.y + at.y,
            to.x + at.x,
            to.y + at.y,
          ),
    );
  }
  if (closed) operators.push(closePath());
  operators.push(line === undefined ? fill() : stroke());
  return operators;
}
