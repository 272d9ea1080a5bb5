/** Drawings as others may make them, typed as tags. Nothing in here is from the project's writer. */
import type { GradeResult } from '../../src/jobs/grade-result';
import { gradePattern } from '../../src/jobs/grade-pattern';
import type { Segment } from '../../src/geometry/segment';
import { outlineSegments } from '../../src/pattern/piece';

type XY = readonly [x: number, y: number];

/** Tags, each a code and a value. */
export function tags(...pairs: readonly (readonly [number, string | number])[]): string {
  return pairs.map(([code, value]) => `${code}\n${value}\n`).join('');
}

const at = ([x, y]: XY, code = 10) => [[code, x] as const, [code + 10, y] as const];

export const line = (layer: string, from: XY, to: XY): string =>
  tags([0, 'LINE'], [8, layer], ...at(from), ...at(to, 11));

export const spot = (layer: string, place: XY): string =>
  tags([0, 'POINT'], [8, layer], ...at(place));

export const words = (layer: string, place: XY, text: string): string =>
  tags([0, 'TEXT'], [8, layer], ...at(place), [40, 3], [1, text]);

/** Vertices with bulges, 0 if left out. */
export const polyline = (
  layer: string,
  vertices: readonly (readonly [x: number, y: number, bulge?: number])[],
  closed = true,
): string =>
  tags([0, 'POLYLINE'], [8, layer], [66, 1], [70, closed ? 1 : 0]) +
  vertices
    .map(([x, y, bulge = 0]) => tags([0, 'VERTEX'], [8, layer], ...at([x, y]), [42, bulge]))
    .join('') +
  tags([0, 'SEQEND']);

export const arc = (layer: string, center: XY, radius: number, from: number, to: number): string =>
  tags([0, 'ARC'], [8, layer], ...at(center), [40, radius], [50, from], [51, to]);

export interface Insert {
  readonly place?: XY;
  readonly scale?: XY;
  readonly turn?: number;
  /** z of the extrusion. */
  readonly extrusion?: number;
  readonly layer?: string;
}

export const insert = (
  block: string,
  { place = [0, 0], scale: [sx, sy] = [1, 1], turn = 0, extrusion = 1, layer = '0' }: Insert = {},
): string =>
  tags(
    [0, 'INSERT'],
    [8, layer],
    [2, block],
    ...at(place),
    [41, sx],
    [42, sy],
    [50, turn],
    [210, 0],
    [220, 0],
    [230, extrusion],
  );

export interface Sheet {
  /** Header variables with the code of their value. */
  readonly header?: Readonly<Record<string, readonly [number, string | number]>>;
  /** Entities by the name of the block. */
  readonly blocks: Readonly<Record<string, string>>;
  readonly base?: XY;
  /** What is on the sheet; nothing if left out. */
  readonly sheet?: string;
}

export function drawing({ header = {}, blocks, base = [0, 0], sheet = '' }: Sheet): string {
  const variables = Object.entries(header).map(([name, value]) => tags([9, name], value));
  const defined = Object.entries(blocks).map(
    ([name, inside]) =>
      tags([0, 'BLOCK'], [8, '0'], [2, name], [70, 0], ...at(base)) + inside + tags([0, 'ENDBLK']),
  );
  const section = (name: string, inside: string): string =>
    tags([0, 'SECTION'], [2, name]) + inside + tags([0, 'ENDSEC']);
  return (
    section('HEADER', variables.join('')) +
    section('BLOCKS', defined.join('')) +
    section('ENTITIES', sheet) +
    tags([0, 'EOF'])
  );
}

export const MILLIMETERS = { $INSUNITS: [70, 4] } as const;

/** Rule 1 stays, rule 2 moves by (4, 1) a size, in the unit of the table. */
export const rules = (unit = 'METRIC', sizes = 'S M L', sample = 'M'): string =>
  `GRADE RULE TABLE: foreign
UNITS: ${unit}
NUMBER OF SIZES: ${sizes.split(' ').length}
SIZE LIST: ${sizes}
SAMPLE SIZE: ${sample}
RULE: DELTA 1
0 0
0 0
0 0
RULE: DELTA 2
-4 -1
0 0
4 1
END
`;

export function read(dxf: string, table = rules()): GradeResult {
  return gradePattern({
    pattern: { text: dxf, file: 'foreign.dxf' },
    rules: { text: table, file: 'foreign.rul' },
  });
}

/** The outline of a piece in a size, y up as the drawing counts it. */
export function outline(
  result: GradeResult,
  size = 'M',
  piece = 0,
): { readonly corners: readonly XY[]; readonly segments: readonly Segment[] } {
  const found = result.range.sizes.find(({ label }) => label === size)?.pieces[piece];
  const segments = found === undefined ? [] : outlineSegments(found);
  return { corners: segments.map(({ from }) => [from.x, 0 - from.y]), segments };
}

/** A rectangle of 200 by 100 with the rule 2 at its far corner and 1 at the others. */
export const SQUARE: readonly XY[] = [
  [0, 0],
  [200, 0],
  [200, 100],
  [0, 100],
];
export const ruled = (corners: readonly XY[], far = 2): string =>
  corners
    .map((place, i) => spot('2', place) + words('2', place, `# ${i === far ? 2 : 1}`))
    .join('');
export const RECTANGLE = polyline('1', SQUARE) + ruled(SQUARE);

/** What is told by findings of a check. */
export const told = ({ findings }: GradeResult, check: string): readonly string[] =>
  findings.filter((own) => own.check === check).map((own) => `${own.severity}: ${own.message}`);
