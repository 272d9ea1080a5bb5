/** The drawings of a graded result: the nest, each size alone, and the garment that it makes. */
import type { GradeResult } from '../jobs/grade-result';
import { zipOf } from '../pattern/zip';
import { lineDrawingSheet } from '../render/line-drawing';
import type { NestDrawing } from '../render/nest-drawing';
import { nestSheet } from '../render/nest-sheet';
import { sizeSheet } from '../render/size-sheet';
import { svg } from '../render/svg';
import type { ResultFile } from './result-file';

/** The nest, each size shown, and the line drawing of a skirt. */
export function drawingFiles(result: GradeResult): readonly ResultFile[] {
  const drawing = drawingOf(result);
  const labels = drawing.sizes.map(({ label }) => label);
  return [
    { name: 'nest.svg', text: svg(nestSheet(drawing)) },
    ...fileLabels(labels).map((label, i) => ({
      name: `size-${label}.svg`,
      text: svg(sizeSheet(drawing, labels[i] ?? '')),
    })),
    ...lineDrawingFile(result),
  ];
}

/** The line drawing of the base size, whose proportions are the design's own. */
function lineDrawingFile({ title, range }: GradeResult): readonly ResultFile[] {
  const base = range.sizes.find(({ label }) => label === range.base);
  const sheet =
    base &&
    lineDrawingSheet(title, { pieces: base.pieces, zip: zipOf(base.pieces, base.parameters) });
  return sheet === undefined ? [] : [{ name: 'drawing.svg', text: svg(sheet) }];
}

/** What the drawings of a result are made from. */
export function drawingOf({
  title,
  imprint,
  pattern,
  range,
  shown,
  display,
  lines,
}: GradeResult): NestDrawing {
  const isCut = shown.every(({ cutPieces }) => cutPieces !== undefined);
  const labels = range.sizes.map(({ label }) => label);
  const ranks = shown.map(({ label }) => labels.indexOf(label));
  return {
    title,
    imprint,
    baseSize: range.base,
    stackPoint: range.stackPoint,
    display,
    ...(lines === undefined ? {} : { lines }),
    ...(isCut ? {} : { given: pattern.file.replace(/^.*[\\/]/u, '') }),
    gapped: ranks.some((rank, i) => i > 0 && rank > (ranks[i - 1] ?? rank) + 1),
    sizes: shown,
  };
}

/** Labels without the characters that file systems refuse, numbered where two become alike. */
function fileLabels(labels: readonly string[]): readonly string[] {
  const taken = new Set<string>();
  return labels.map((label) => {
    const safe = label.replace(/[^\p{L}\p{N}._+-]+/gu, '_');
    let name = safe;
    for (let n = 2; taken.has(name.toLowerCase()); n++) name = `${safe}_${n}`;
    taken.add(name.toLowerCase());
    return name;
  });
}
