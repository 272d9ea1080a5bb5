/** A graded given pattern as named texts: drawings and tables. */
import type { PatternResult } from './grade-pattern';
import type { NestDrawing } from './render/nest-drawing';
import { nestSheet } from './render/nest-sheet';
import { seamsTable } from './render/seams-table';
import { sizeSheet } from './render/size-sheet';
import { svg } from './render/svg';
import { findingsTable, gradeRulesTable, gradedPointsTable } from './render/tables';
import { TOILE } from './render/wording';
import type { ResultFile } from './result-files';
import { fileLabels } from './result-files';

/** Every file of a result, in a fixed order; the same result gives the same bytes. */
export function patternFiles(result: PatternResult): readonly ResultFile[] {
  const { range, ruleTexts, shown, display, findings, seams } = result;
  const drawing = patternDrawing(result);
  const labels = shown.map(({ label }) => label);
  return [
    { name: 'nest.svg', text: svg(nestSheet(drawing)) },
    ...fileLabels(labels).map((label, i) => ({
      name: `size-${label}.svg`,
      text: svg(sizeSheet(drawing, labels[i] ?? '')),
    })),
    { name: 'graded-points.csv', text: gradedPointsTable(shown, display) },
    { name: 'grade-rules.csv', text: gradeRulesTable(range, ruleTexts, shown, display) },
    { name: 'seams.csv', text: seamsTable(range, seams, display) },
    { name: 'findings.csv', text: findingsTable(findings, display) },
  ];
}

function patternDrawing(result: PatternResult): NestDrawing {
  const { title, range, stackPoint, display, shown, pattern } = result;
  return {
    title,
    baseSize: range.base,
    stackPoint,
    display,
    notes: [`Lines as ${pattern.file.replace(/^.*[\\/]/u, '')} gives them.`, TOILE],
    sizes: shown,
  };
}
