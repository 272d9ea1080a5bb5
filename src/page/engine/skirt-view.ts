/** A graded skirt as the page shows it. */
import type { Finding } from '../../check/finding';
import { EXPORTS } from '../../files/exports';
import type { GradeResult } from '../../jobs/grade-result';
import type { PiecePlan } from '../../pattern/piece';
import { settlingOf } from '../../verdict/settling';
import { sizesAt } from '../../verdict/size-words';
import type { Decision } from '../../verdict/verdict';
import { verdictOf } from '../../verdict/verdict';
import { verdictLine } from '../../verdict/words';
import type { DecisionView, DoubtView, MeasureView, SkirtView, Spot } from '../wish';
import { parameterViews } from './parameter-view';
import { pictures } from './pictures';
import { pieceViews } from './piece-view';

/** All that is shown of a skirt without asking for more. */
export function skirtView(result: GradeResult): SkirtView {
  const { title, range, display, findings, seams } = result;
  const sizes = range.sizes.map(({ label }) => label);
  const verdict = verdictOf(findings, sizes, display);
  return {
    title,
    style: range.draft?.style.name,
    base: range.base,
    sizes,
    display,
    stackPoint: range.stackPoint,
    stackPoints: stackPoints(range.plans),
    pieces: pieceViews(range),
    verdict: {
      kind: verdict.kind,
      counts: verdict.counts,
      line: verdictLine(verdict),
      decisions: verdict.decisions.map((decision) => decisionView(decision, result)),
    },
    parameters: parameterViews(range),
    measures: measureViews(result),
    seams: seams.map(({ pair, walks }) => ({
      name: pair.name,
      values: walks.map(({ gap }) => gap),
    })),
    doubts: doubtsOf(result),
    pictures: pictures(result),
    exports: EXPORTS.map(({ name }) => name),
  };
}

/** Corners that more than one piece has: where sizes are usually laid together. */
function stackPoints(plans: readonly PiecePlan[]): readonly string[] {
  const counts = new Map<string, number>();
  for (const { pointNames, handles } of plans)
    for (const name of pointNames)
      if (!handles.has(name)) counts.set(name, (counts.get(name) ?? 0) + 1);
  return [...counts].filter(([, count]) => count > 1).map(([name]) => name);
}

function measureViews({ range }: GradeResult): readonly MeasureView[] {
  return (range.sizes[0]?.measures ?? []).map(({ name }, i) => ({
    name,
    values: range.sizes.map(({ measures }) => {
      const value = measures[i]?.value ?? Infinity;
      return Number.isFinite(value) ? value : null;
    }),
  }));
}

function decisionView(decision: Decision, result: GradeResult): DecisionView {
  const { severity, text, findings } = decision;
  const spot = findings
    .map((finding) => spotOf(finding, result.range.plans))
    .find((one) => one !== undefined);
  const setting = settlingOf(decision, result.pattern.unit);
  return {
    severity,
    text,
    findings: findings.map(({ size, message }) => (size === '' ? message : `${size}: ${message}`)),
    ...(spot === undefined ? {} : { spot }),
    ...(setting === undefined ? {} : { setting }),
  };
}

/** The first piece that a finding names, and what of it is its subject. */
function spotOf({ piece, subject }: Finding, plans: readonly PiecePlan[]): Spot | undefined {
  const names = piece.split(/,\s*/u);
  const plan = plans.find(({ name }) => names.includes(name));
  if (plan === undefined) return undefined;
  const words = subject.split(/[\s,]+/u);
  const point = plan.pointNames.find((name) => words.includes(name));
  if (point !== undefined) return { piece: plan.name, point };
  const edge = plan.outline.find(({ seam }) => words.includes(seam));
  return { piece: plan.name, ...(edge === undefined ? {} : { seam: edge.seam }) };
}

/** Findings about rows of the chart, at the cells of their sizes. */
function doubtsOf({ findings, chart }: GradeResult): readonly DoubtView[] {
  if (chart === undefined) return [];
  return findings
    .filter(
      ({ severity, piece }) => piece === '' && (severity === 'fail' || severity === 'warning'),
    )
    .flatMap((finding) =>
      finding.subject.split(/,\s*/u).flatMap((name) => {
        const row = chart.rows.find((one) => one.name === name);
        const [place] = row?.places ?? [];
        if (row === undefined || place === undefined) return [];
        const sizes = sizesAt(finding.size, chart.sizes);
        const columns = row.places.flatMap(({ column }, i) =>
          sizes.includes(chart.sizes[i] ?? '') ? [column] : [],
        );
        return [{ severity: finding.severity, row: place.row, columns, text: finding.message }];
      }),
    );
}
