/** The cutting card of a pattern: its pieces with counts, cloths, areas, marks and pictures. */
import { segmentsBounds } from '../geometry/bounds';
import { loopArea, loopLength } from '../geometry/loop';
import { distance } from '../geometry/point';
import { movedSegment } from '../geometry/segment';
import type { GradeResult } from '../jobs/grade-result';
import type { CutPiece } from '../pattern/cut-piece';
import { markedPieces } from '../pattern/cut-pieces';
import type { PiecePlan } from '../pattern/piece';
import { sheetNamed } from '../print/paper';
import type { SizeTable } from '../print/size-table';
import { tablePages } from '../print/table-pages';
import { cuttings, sizesShown, spelled } from '../render/captions';
import { pdf } from '../render/pdf';
import type { Stroke } from '../render/scene';
import { INK } from '../render/size-style';
import type { Sketch } from '../render/sketch';
import { sketchOf } from '../render/sketch';
import { text } from '../render/type';
import { writtenCsv } from '../table/written-csv';
import { fromMillimeters, trimmed } from '../units';
import type { Exported } from './exports';

/** A piece of one size; along its sewing line where nothing says how it is cut. */
interface CardPiece {
  readonly label: string;
  readonly plan: PiecePlan;
  readonly cut: CutPiece;
  readonly isCut: boolean;
}

/**
 * `cutting-card.csv` and `cutting-card.pdf` of the sizes shown, on A4 or Letter by the unit. Areas and
 * perimeters are those of the cut line, of the whole piece where it lies on a fold; of the sewing line
 * where nothing says how a piece is cut, and the card says so.
 */
export async function cardFiles(result: GradeResult): Promise<Exported> {
  const { title, shown, range, display, imprint } = result;
  const sizes = shown.map(({ label, pieces: net, cutPieces, parameters }) => ({
    label,
    isCut: cutPieces !== undefined,
    all: cutPieces ?? markedPieces(net, parameters),
  }));
  const pieces = range.plans.map((plan, p) =>
    sizes.flatMap(({ label, isCut, all }): readonly CardPiece[] => {
      const cut = all[p];
      return cut === undefined ? [] : [{ label, plan, cut, isCut }];
    }),
  );
  const paper = sheetNamed(display.unit === 'in' ? 'letter' : 'a4');
  const tables = cardTables(title, pieces, range.base);
  const pages = tablePages(tables, () => [], `Cutting card: ${title}`, paper, MARGIN, 0);
  const bytes = await pdf(
    `Cutting card: ${title}`,
    [],
    pages.map((scene) => ({ scene, windows: [] })),
    imprint,
  );
  return {
    files: [{ name: 'cutting-card.csv', text: cardTable(pieces) }],
    printed: [{ name: 'cutting-card.pdf', bytes }],
    findings: [],
  };
}

const MARGIN = 12;

function isFolded({ plan }: CardPiece): boolean {
  return plan.cuttings.some(({ onFold }) => onFold);
}

/** Square mm of the whole piece, both halves of what lies on a fold. */
function areaOf(own: CardPiece): number {
  return Math.abs(loopArea(own.cut.cut)) * (isFolded(own) ? 2 : 1);
}

/** mm around the whole piece; a fold is not cut. */
function perimeterOf(own: CardPiece): number {
  const { cut, fold } = own.cut;
  const length = loopLength(cut);
  if (!isFolded(own)) return length;
  return 2 * (length - (fold === undefined ? 0 : distance(fold.from, fold.to)));
}

/**
 * `number,piece,cut,size,line,area_cm2,perimeter_cm,notches,drill_holes`, a row for each piece and size;
 * a double notch counts as one.
 */
function cardTable(pieces: readonly (readonly CardPiece[])[]): string {
  const rows = pieces.flatMap((sizes, p) =>
    sizes.map((own) => [
      ...[String(p + 1), own.plan.name, cuttings(own.plan).join('; '), own.label],
      ...[own.isCut ? 'cut' : 'sewing', trimmed(areaOf(own) / 100, 1)],
      trimmed(fromMillimeters(perimeterOf(own), 'cm'), 1),
      String(own.cut.notches.length),
      String(own.cut.drillHoles.length),
    ]),
  );
  const head = ['number', 'piece', 'cut', 'size', 'line', 'area_cm2', 'perimeter_cm'];
  return writtenCsv([[...head, 'notches', 'drill_holes'], ...rows]);
}

function cardTables(
  title: string,
  pieces: readonly (readonly CardPiece[])[],
  base: string,
): readonly SizeTable[] {
  const sizes = (pieces[0] ?? []).map(({ label }) => label);
  const rowsOf = (units: readonly (readonly [string, (own: CardPiece) => number])[]) =>
    pieces.map((own, p) => ({
      name: shortened(`${p + 1} ${spelled(own[0]?.plan.name ?? '')}`),
      lines: units.map(([unit, measure]) => ({
        unit,
        cells: own.map((one) => measure(one).toFixed(unit === 'cm²' ? 0 : 1)),
      })),
    }));
  const isCut = pieces.flat().every((own) => own.isCut);
  const line = isCut ? 'as cut' : 'at the sewing line, for want of allowances';
  const bases = pieces.map((own) => own.find(({ label }) => label === base) ?? own[0]);
  return [
    {
      heading: '',
      sizes: [],
      rows: [],
      notes: [
        `Cutting card: ${title}, ${sizesShown(sizes).toLowerCase()}. Notches and pictures are those of ${base}.`,
        ...bases.flatMap((own, p) => (own === undefined ? [] : [pieceWords(own, p + 1)])),
      ],
      pictures: bases.flatMap((own, p) => (own === undefined ? [] : [picture(own, p + 1)])),
    },
    {
      heading: `Area of one whole piece ${line}`,
      sizes,
      rows: rowsOf([
        ['cm²', (own) => areaOf(own) / 100],
        ['in²', (own) => areaOf(own) * fromMillimeters(1, 'in') ** 2],
      ]),
    },
    {
      heading: `Around one whole piece ${line}`,
      sizes,
      rows: rowsOf([
        ['cm', (own) => fromMillimeters(perimeterOf(own), 'cm')],
        ['in', (own) => fromMillimeters(perimeterOf(own), 'in')],
      ]),
    },
  ];
}

/** A name that the column of a table holds in type that can be read; the list has it in full. */
function shortened(name: string): string {
  return name.length <= LONGEST_NAME ? name : `${name.slice(0, LONGEST_NAME - 1)}…`;
}

const LONGEST_NAME = 22;

/** `1 FRONT: Cut 1 on fold. Notches: hip-line (1), dart (2). Drill holes: 1.` */
function pieceWords({ plan, cut }: CardPiece, number: number): string {
  const counts = cuttings(plan);
  const names = new Map<string, number>();
  for (const { name } of cut.notches) names.set(name, (names.get(name) ?? 0) + 1);
  const notches = [...names]
    .map(([name, count]) => `${name.replace(/[_-]/gu, ' ')} (${count})`)
    .join(', ');
  const holes = cut.drillHoles.length;
  return [
    `${number} ${spelled(plan.name)}: ${counts.length === 0 ? 'no count is stated' : counts.join(', ')}.`,
    ...(notches === '' ? [] : [`Notches: ${notches}.`]),
    ...(holes === 0 ? [] : [`Drill holes: ${holes}.`]),
  ].join(' ');
}

/** mm. The box that a picture fits into, and the type of its number. */
const [WIDTH, HEIGHT, NUMBER] = [26, 40, 4];
const LINE: Stroke = { color: INK, width: 0.35 };

function picture(own: CardPiece, number: number): Sketch {
  const line = own.cut.cut;
  const { left, top, right, bottom } = segmentsBounds(line);
  const scale = Math.min(WIDTH / (right - left), HEIGHT / (bottom - top));
  const segments = line.map((segment) =>
    movedSegment(segment, ({ x, y }) => ({
      x: (x - left) * scale,
      y: (y - top) * scale + 2 * NUMBER,
    })),
  );
  return sketchOf([
    text(String(number), { x: 0, y: NUMBER }, NUMBER, { weight: 'bold' }),
    { kind: 'path', part: 'outline', segments, closed: true, stroke: LINE },
  ]);
}
