/**
 * Writes pages as a PDF file, ISO 32000-1. The library for it is large: import this file only when
 * a PDF is wanted.
 */
import fontkit from '@cantoo/fontkit';
import type { PDFContext, PDFFont, PDFRef } from '@cantoo/pdf-lib';
import { PDFDocument, PrintScaling } from '@cantoo/pdf-lib';
import { InputError } from '../errors';
import type { Box } from '../geometry/bounds';
import { joinBoxes } from '../geometry/bounds';
import type { Point } from '../geometry/point';
import type { Imprint } from '../table/imprint';
import { imprintDay, imprintWords } from '../table/imprint';
import { VERSION } from './version';
import type { Names } from './pdf-content';
import { POINTS_PER_INCH, POINTS_PER_MILLIMETER } from '../units';
import { contentOf, millimeters, windowContent } from './pdf-content';
import { face } from './pdf-face';
import { FONT_FILES } from './font-files';
import { packedStream } from './pdf-stream';
import type { PdfLayer } from './pdf-layers';
import { addLayers } from './pdf-layers';
import type { Scene, Shape, TextShape } from './scene';
import { shapeBox } from './shape-box';

/** The part `part` of a large drawing, in its coordinates, shown on a page with its corner `at`. */
export interface PdfWindow {
  readonly drawing: readonly Shape[];
  readonly part: Box;
  readonly at: Point;
}

/** A page is a scene over windows onto drawings. Pages that show one drawing share its content. */
export interface PdfPage {
  readonly scene: Scene;
  readonly windows: readonly PdfWindow[];
}

/** The longest side of a page in points, ISO 32000-1 annex C. */
const LONGEST = 14_400;

/**
 * The bytes of a file with these pages at true scale; they depend on nothing else, so no identifier is
 * written, and no date but one that the imprint states. Layers that groups name must be among `layers`. Throws InputError
 * `character-unprintable`, and `paper-too-large` for a page that the format cannot hold.
 */
export async function pdf(
  title: string,
  layers: readonly PdfLayer[],
  pages: readonly PdfPage[],
  imprint: Imprint = {},
): Promise<Uint8Array> {
  const document = await PDFDocument.create({ updateMetadata: false });
  document.setTitle(title, { showInWindowTitleBar: true });
  document.setProducer(`skirtgrade ${VERSION}`);
  const { designer, ...others } = imprint;
  if (designer !== undefined) document.setAuthor(designer);
  const said = imprintWords(others);
  if (said !== '') document.setSubject(said);
  const day = imprintDay(imprint);
  if (day !== undefined) document.setCreationDate(day);
  document.setLanguage('en');
  // Readers offer no scaling by themselves then (table 150).
  document.catalog.getOrCreateViewerPreferences().setPrintScaling(PrintScaling.None);

  const groups = addLayers(document, layers);
  const keyOf = (i: number): string => `Layer${i}`;
  document.registerFontkit(fontkit);
  const tag = tagOf(pages);
  const embedded = async (weight: TextShape['weight']): Promise<PDFFont> => {
    const { name, bytes } = FONT_FILES[weight];
    const font = await document.embedFont(bytes, { subset: true, customName: `${tag}+${name}` });
    // The widths of a font that shows nothing at all would be no list of widths.
    font.encodeText(' ');
    return font;
  };
  const fonts = [await embedded('normal'), await embedded('bold')] as const;
  const names: Names = {
    faces: { normal: face(fonts[0]), bold: face(fonts[1]) },
    layers: new Map(layers.map(({ name }, i) => [name, keyOf(i)])),
  };
  const { context } = document;
  const resources = {
    Font: Object.fromEntries(fonts.map(({ name, ref }) => [name, ref])),
    Properties: Object.fromEntries(groups.map((group, i) => [keyOf(i), group])),
  };
  const ownResources = context.register(context.obj(resources));
  const objects = drawingObjects(context, pages, names, ownResources);
  const pageResources = context.register(
    context.obj({
      ...resources,
      XObject: Object.fromEntries([...objects.values()].map(({ key, ref }) => [key, ref])),
    }),
  );
  for (const { scene, windows } of pages) {
    const lines = [
      millimeters(scene.height),
      ...windows.map(({ drawing, part, at }) =>
        windowContent(objects.get(drawing)?.key ?? '', part, at),
      ),
      contentOf(scene.shapes, names),
    ];
    addPage(document, scene, packedStream(context, lines.join('\n')), pageResources);
  }
  return document.save();
}

/** Six letters that differ where the words of files do, and so the parts of their fonts (clause 9.6.4). */
function tagOf(pages: readonly PdfPage[]): string {
  const drawn = pages.flatMap(({ scene, windows }) => [
    scene.shapes,
    ...windows.map(({ drawing }) => drawing),
  ]);
  const letters = new Set([...new Set(drawn)].flatMap(wordsIn).join(''));
  let sum = 0;
  for (const letter of letters) sum = (sum * 31 + letter.charCodeAt(0)) % 26 ** 6;
  return Array.from({ length: 6 }, (_, i) =>
    String.fromCharCode(65 + (Math.floor(sum / 26 ** i) % 26)),
  ).join('');
}

function wordsIn(shapes: readonly Shape[]): readonly string[] {
  return shapes.flatMap((shape) => {
    if (shape.kind === 'text') return [shape.words];
    return shape.kind === 'group' ? wordsIn(shape.children) : [];
  });
}

/** Each drawing once, however many windows look at it: its name among the resources, and its object. */
function drawingObjects(
  context: PDFContext,
  pages: readonly PdfPage[],
  names: Names,
  resources: PDFRef,
): ReadonlyMap<readonly Shape[], { readonly key: string; readonly ref: PDFRef }> {
  const drawings = [...new Set(pages.flatMap(({ windows }) => windows.map((w) => w.drawing)))];
  return new Map(
    drawings.map((drawing, i) => {
      const { left, top, right, bottom } = joinBoxes(drawing.map(shapeBox));
      const form = packedStream(context, contentOf(drawing, names), {
        Type: 'XObject',
        Subtype: 'Form',
        BBox: [left, top, right, bottom],
        Resources: resources,
      });
      return [drawing, { key: `Drawing${i}`, ref: form }] as const;
    }),
  );
}

function addPage(
  document: PDFDocument,
  { width, height }: Scene,
  content: PDFRef,
  resources: PDFRef,
) {
  const size: [number, number] = [width * POINTS_PER_MILLIMETER, height * POINTS_PER_MILLIMETER];
  if (Math.max(...size) > LONGEST)
    throw new InputError('paper-too-large', {
      what: 'the page is larger than a PDF file can hold',
      allowed: `sides of ${LONGEST / POINTS_PER_INCH} in at most; choose fewer sizes or a wider paper`,
      got: `${Math.ceil(width)} x ${Math.ceil(height)} mm`,
    });
  const { node } = document.addPage(size);
  const { context } = document;
  node.set(context.obj('Resources'), resources);
  node.set(context.obj('Contents'), content);
}
