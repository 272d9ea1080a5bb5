/** The drawings of bodies in great numbers: a file each, in folders of a thousand rows. */
import type { BodyColumns, BodyEntry } from '../bodies/body-list';
import type { BodyRequest } from '../bodies/draft-bodies';
import { gradeBody } from '../bodies/draft-bodies';
import type { SizeChart } from '../chart/size-chart';
import { writeNest } from '../dxf/write-nest';
import { bodyDrawing, bodyStem } from './body-files';
import type { ResultFile } from './result-file';

/** What a body may be drawn as. */
export const DRAWING_KINDS = ['svg', 'dxf'] as const;

/** One of them. */
export type DrawingKind = (typeof DRAWING_KINDS)[number];

/** The folder of all drawings beside the tables. */
export const DRAWINGS = 'drawings';

/** Rows of the list whose drawings stand in one folder. */
const ROWS = 1_000;

/** `12/body-12345.svg`: the folder of a row, and the name of its drawing there. */
export const DRAWING_PATH = /^\d+[\\/]body-\d+\.(?:svg|dxf)$/u;

/**
 * The drawings of one body, by their paths below the folder of all: those that `draft` makes of it by
 * itself under its row. Throws InputError as a draft does.
 */
export function streamedDrawings(
  columns: BodyColumns,
  entry: BodyEntry,
  chart: SizeChart,
  request: BodyRequest,
  kinds: readonly DrawingKind[],
): readonly ResultFile[] {
  const result = gradeBody(columns, chart, request, []);
  const folder = Math.floor(entry.number / ROWS);
  const files: Readonly<Record<DrawingKind, () => ResultFile>> = {
    svg: () => bodyDrawing(entry, result),
    dxf: () => ({
      name: `${bodyStem(entry)}.dxf`,
      text: [...writeNest(result.shown, { lines: request.lines })].join(''),
    }),
  };
  return kinds.map((kind) => {
    const { name, text } = files[kind]();
    return { name: `${folder}/${name}`, text };
  });
}
