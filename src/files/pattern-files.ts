/** A graded given pattern as named texts: drawings and tables. */
import type { PatternResult } from '../jobs/grade-pattern';
import { linesNote } from '../render/lines-shown';
import type { NestDrawing } from '../render/nest-drawing';
import { linesShown } from '../render/nest-drawing';
import { seamsTable } from './seams-table';
import { findingsTable, gradeRulesRows, gradedPointsRows } from './tables';
import { TOILE } from '../render/captions';
import type { ResultFile } from './result-files';
import { drawingFiles, longFile } from './result-files';

/** Every file of a result, in a fixed order; the same result gives the same bytes. */
export function patternFiles(result: PatternResult): readonly ResultFile[] {
  const { range, ruleTexts, shown, display, findings, seams } = result;
  return [
    ...drawingFiles(patternDrawing(result)),
    longFile('graded-points.csv', () => gradedPointsRows(shown, display)),
    longFile('grade-rules.csv', () => gradeRulesRows(range, ruleTexts, shown, display)),
    { name: 'seams.csv', text: seamsTable(range, seams, display) },
    { name: 'findings.csv', text: findingsTable(findings, display) },
  ];
}

/** What the drawings of a given pattern are made from. */
export function patternDrawing(result: PatternResult): NestDrawing {
  const { title, range, stackPoint, display, shown, pattern, lines } = result;
  const drawing: NestDrawing = {
    title,
    baseSize: range.base,
    stackPoint,
    display,
    ...(lines === undefined ? {} : { lines }),
    sizes: shown,
  };
  const isCut = shown.every(({ cutPieces }) => cutPieces !== undefined);
  const given = `Lines as ${pattern.file.replace(/^.*[\\/]/u, '')} gives them.`;
  return { ...drawing, notes: [isCut ? linesNote(linesShown(drawing)) : given, TOILE] };
}
