/** Drafts in, graded range out: rules from the drafts, every size from base plus rules. */
import type { Draft } from '../draft/compile-block';
import { finishedMeasures } from '../measure/finished';
import { madePieceMeasures } from '../measure/made-pieces';
import { zipMeasures } from '../measure/zip';
import type { PiecePlan } from '../pattern/piece';
import type { GradedRange } from './graded-range';
import { roundCumulative } from './rounding';
import { applyRules, deriveRules } from './rules';
import { checkStackPoint, stackOn } from './stack';

/** One size ready to be graded. */
export interface DraftedSize {
  readonly label: string;
  readonly body: ReadonlyMap<string, number>;
  readonly draft: Draft;
}

/** From which size a range is graded, on which point, and how fine. */
export interface GradeOptions {
  /** Label of the base size; it must be among the sizes. */
  readonly base: string;
  /** The point of each piece on which all sizes lie, the zero of its rules. */
  readonly stackPoint: string;
  /** mm; undefined leaves the rules exact. */
  readonly roundingStep: number | undefined;
}

/**
 * Grades a range. The drafts give the rules; the graded pieces come from the base and the rules
 * alone. Throws InputError `point-unknown` if the stack point is not on every piece.
 */
export function gradeRange(
  plans: readonly PiecePlan[],
  sizes: readonly DraftedSize[],
  { base, stackPoint, roundingStep }: GradeOptions,
): Omit<GradedRange, 'ruleFormulas'> {
  checkStackPoint(plans, stackPoint);
  const baseIndex = sizes.findIndex((size) => size.label === base);
  const drafts = sizes.map(({ draft }) => draft.pieces.map((piece) => stackOn(piece, stackPoint)));
  const exactRules = deriveRules(drafts, baseIndex);
  const rules = roundingStep === undefined ? exactRules : roundCumulative(exactRules, roundingStep);
  const graded = applyRules(drafts[baseIndex] ?? [], rules);
  return {
    base,
    stackPoint,
    roundingStep,
    plans,
    exactRules,
    rules,
    sizes: sizes.map(({ label, body, draft }, i) => {
      const pieces = graded[i] ?? [];
      return {
        label,
        body,
        parameters: draft.parameters,
        draft: drafts[i] ?? [],
        trued: draft.trued,
        pieces,
        measures: [
          ...finishedMeasures(pieces),
          ...madePieceMeasures(pieces),
          ...zipMeasures(pieces, draft.parameters),
        ],
      };
    }),
  };
}
