/**
 * A drafted range graded, cut, walked, measured and checked step by step, as `gradeChart` does it at
 * once, so that each step can be timed and a block that is compiled already can be given a body.
 */
import type { SizeChart } from '../../src/chart/size-chart';
import { checkPattern } from '../../src/check/checks';
import { derivedRules } from '../../src/grade/derived-rules';
import type { DraftedPattern } from '../../src/grade/graded-pattern';
import { redraftOf } from '../../src/grade/redraft';
import type { RuleFormulas } from '../../src/grade/rule-formula';
import { applyRules, deriveRules } from '../../src/grade/rules';
import { CENTER_WAIST, stackOn } from '../../src/grade/stack';
import type { DraftedRange } from '../../src/jobs/draft-range';
import type { GradeResult } from '../../src/jobs/grade-result';
import { finishedMeasures } from '../../src/measure/finished';
import { skirtPoints } from '../../src/measure/skirt-points';
import { zipLengths } from '../../src/measure/zip-lengths';
import { cutPieces } from '../../src/pattern/cut-pieces';
import { ruledPiece } from '../../src/pattern/pattern';
import { inFormulas } from '../../src/seams/slip-search';
import { walkedSeams } from '../../src/seams/walked-seam';
import { allowedStep } from '../../src/stride/walking-room';

/** Does a step and gives what it gave. */
export type Timed = <T>(step: string, work: () => T) => T;

/** No step is timed. */
export const untimed: Timed = (_, work) => work();

/** Grades the sizes of `drafted` from the one at place `base`, with the formulas of their rules. */
export function gradedSteps(
  { style, parameters, drafter, layout, sizes }: Omit<DraftedRange, 'styleLines' | 'blend'>,
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
  const range: DraftedPattern = timed('measure', () => ({
    ...{ plans, rules, exactRules: rules, roundingStep: undefined, stackPoint: CENTER_WAIST },
    base: sizes[base]?.label ?? '',
    sizes: sizes.map(({ label, body, draft: { parameters: own } }, i) => {
      const pieces = graded[i] ?? [];
      const stride = { name: 'stride', value: allowedStep({ pieces, parameters: own, body }) };
      return {
        ...{ label, parameters: own, pieces },
        cutPieces: cut[i],
        measures: [...finishedMeasures(points, pieces, zipLengths(pieces, own)), stride],
      };
    }),
    draft: {
      ...{ style, parameters, drafter },
      ruleFormulas: formulas(),
      sizes: sizes.map(({ body, draft: { trued } }, i) => ({
        ...{ body, trued },
        pieces: drafts[i] ?? [],
      })),
    },
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
    unread: [],
  };
  const given = derivedRules(range, pattern.file);
  const findings = timed('check', () =>
    checkPattern({
      ...{ pattern, range, seams, chart, display },
      rules: given,
      search: inFormulas(redraftOf(drafter, sizes, range)),
      against: undefined,
      exact: undefined,
    }),
  );
  return {
    ...{ title: pattern.title, imprint: {}, pattern, chart, range, seams, display, findings },
    rules: given,
    made: { of: 'steps', inFull: 'Steps', caution: '' },
    ruleTexts: range.draft.ruleFormulas,
    shown: range.sizes,
    lines: undefined,
  };
}
