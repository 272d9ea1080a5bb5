/**
 * A drafted range graded, cut, walked, measured and checked step by step, as `gradeChart` does it at
 * once, so that each step can be timed and a block that is compiled already can be given a body.
 */
import type { SizeChart } from '../../src/chart/size-chart';
import type { DraftContext } from '../../src/check/checks';
import { DRAFT_CHECKS, checkPattern } from '../../src/check/checks';
import { derivedRules } from '../../src/grade/derived-rules';
import type { GradedRange } from '../../src/grade/graded-pattern';
import type { RuleFormulas } from '../../src/grade/rule-formula';
import { applyRules, deriveRules } from '../../src/grade/rules';
import { CENTER_WAIST, stackOn } from '../../src/grade/stack';
import type { DraftedRange } from '../../src/jobs/draft-range';
import { redraftOf } from '../../src/jobs/redraft';
import type { GradeResult } from '../../src/jobs/grade-result';
import { finishedMeasures } from '../../src/measure/finished';
import { skirtPoints } from '../../src/measure/skirt-points';
import { zipLengths } from '../../src/measure/zip';
import { cutPieces } from '../../src/pattern/cut-pieces';
import { ruledPiece } from '../../src/pattern/pattern';
import { walkedSeams } from '../../src/seams/walked-seam';
import { allowedStep } from '../../src/stride/walking-room';

/** Does a step and gives what it gave. */
export type Timed = <T>(step: string, work: () => T) => T;

/** No step is timed. */
export const untimed: Timed = (_, work) => work();

/** Grades the sizes of `drafted` from the one at place `base`, with the formulas of their rules. */
export function gradedSteps(
  { drafter, layout, sizes }: Pick<DraftedRange, 'drafter' | 'layout' | 'sizes'>,
  base: number,
  formulas: () => RuleFormulas,
  chart: SizeChart | undefined,
  timed: Timed,
): GradeResult {
  const { plans } = drafter;
  const unit = chart?.unit ?? 'cm';
  const display = { unit, fractions: false } as const;
  const { drafts, rules, graded } = timed('grade', () => {
    const stacked = sizes.map(({ draft }) => draft.pieces.map((p) => stackOn(p, CENTER_WAIST)));
    const derived = deriveRules(stacked, base);
    return { drafts: stacked, rules: derived, graded: applyRules(stacked[base] ?? [], derived) };
  });
  const cut = timed('cut', () =>
    graded.map((pieces, i) => cutPieces(pieces, sizes[i]?.draft.parameters ?? new Map())),
  );
  const points = skirtPoints(plans);
  const range: GradedRange = timed('measure', () => ({
    ...{ plans, rules, exactRules: rules, roundingStep: undefined, stackPoint: CENTER_WAIST },
    base: sizes[base]?.label ?? '',
    ruleFormulas: formulas(),
    sizes: sizes.map(({ label, body, draft: { parameters, trued } }, i) => {
      const pieces = graded[i] ?? [];
      const stride = { name: 'stride', value: allowedStep({ pieces, parameters, body }) };
      return {
        ...{ label, body, parameters, trued, pieces },
        cutPieces: cut[i],
        draft: drafts[i] ?? [],
        measures: [...finishedMeasures(points, pieces, zipLengths(pieces, parameters)), stride],
      };
    }),
  }));
  const seams = timed('walk', () => walkedSeams(range, layout.seams));
  const pattern = {
    file: 'bench.csv',
    title: 'Bench',
    unit,
    base: range.base,
    pieces: (graded[base] ?? []).map(ruledPiece),
    seams: layout.seams,
    unpaired: [],
    leftOut: [],
  };
  const findings = timed('check', () =>
    checkPattern<DraftContext>(
      {
        ...{ pattern, range, seams, chart, display },
        rules: derivedRules(range, pattern.file),
        redraft: redraftOf({ drafter, sizes }, range),
        against: undefined,
        exact: undefined,
      },
      DRAFT_CHECKS,
    ),
  );
  return {
    ...{ title: pattern.title, imprint: {}, pattern, chart, range, seams, display, findings },
    ruleTexts: range.ruleFormulas,
    shown: range.sizes,
    lines: undefined,
  };
}
