/** A graded result as named texts: the drawings and tables, ready for whoever writes files. */
import { cutPieces } from '../pattern/cut-pieces';
import type { GradeResult } from '../jobs/grade-chart';
import type { NestDrawing } from '../render/nest-drawing';
import { nestSheet } from '../render/nest-sheet';
import { sizeSheet } from '../render/size-sheet';
import { svg } from '../render/svg';
import {
  findingsTable,
  finishedMeasurementsTable,
  gradeRulesTable,
  gradedPointsTable,
} from './tables';

/** A file of text before it is written. */
export interface ResultFile {
  readonly name: string;
  readonly text: string;
  /** The text part by part, for a file so long that it should not be in memory at once. */
  readonly parts?: () => Iterable<string>;
}

/** A long file, whose parts are made when they are asked for. */
export function longFile(name: string, parts: () => Iterable<string>): ResultFile {
  return {
    name,
    parts,
    get text() {
      return [...parts()].join('');
    },
  };
}

/** A file that is not text. */
export interface BinaryFile {
  readonly name: string;
  readonly bytes: Uint8Array;
}

/** Every file of a result, in a fixed order; the same result gives the same bytes. */
export function resultFiles(result: GradeResult): readonly ResultFile[] {
  const { range, shown, display, findings } = result;
  return [
    ...drawingFiles(drawingOf(result)),
    { name: 'graded-points.csv', text: gradedPointsTable(shown, display) },
    { name: 'grade-rules.csv', text: gradeRulesTable(range, range.ruleFormulas, shown, display) },
    { name: 'finished-measurements.csv', text: finishedMeasurementsTable(shown, display) },
    { name: 'findings.csv', text: findingsTable(findings, display) },
  ];
}

/** The nest, and each size alone. */
export function drawingFiles(drawing: NestDrawing): readonly ResultFile[] {
  const labels = drawing.sizes.map(({ label }) => label);
  return [
    { name: 'nest.svg', text: svg(nestSheet(drawing)) },
    ...fileLabels(labels).map((label, i) => ({
      name: `size-${label}.svg`,
      text: svg(sizeSheet(drawing, labels[i] ?? '')),
    })),
  ];
}

/** What the drawings of a result are made from. */
export function drawingOf(result: GradeResult): NestDrawing {
  const { range, shown, display, lines } = result;
  return {
    title: titleOf(result),
    baseSize: range.base,
    stackPoint: range.stackPoint,
    display,
    ...(lines === undefined ? {} : { lines }),
    sizes: shown.map(({ label, pieces, parameters }) => ({
      label,
      pieces,
      cutPieces: cutPieces(pieces, parameters),
    })),
  };
}

/** The chart's own title (`# title: ...`), or the style's name. */
function titleOf({ chart, style }: GradeResult): string {
  const stated = chart.comments.map((line) => /^title\s*[:=]\s*(.+)$/i.exec(line)?.[1]?.trim());
  return stated.find((title) => title !== undefined) ?? `${style.name} skirt`;
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
