/** What is told of a point or a seam of a graded skirt. */
import type { GradeResult } from '../../jobs/grade-result';
import type { Point } from '../../geometry/point';
import { stepsOf } from '../../grade/rules';
import type { GradeRules } from '../../grade/rules';
import { seamLength } from '../../pattern/piece';
import type { Spot, SpotView } from '../wish';

/** The ladder and the rule of a point, or the lengths of a seam; nothing of what is not there. */
export function spotView({ range, ruleTexts }: GradeResult, spot: Spot): SpotView {
  const { piece, point, seam } = spot;
  const p = range.plans.findIndex(({ name }) => name === piece);
  const plan = range.plans[p];
  const place = plan?.index.get(point ?? '');
  if (place !== undefined) {
    const rule = ruleTexts[p]?.[place];
    const of = (moves: GradeRules['moves']): [number, number][] =>
      moves.map((pieces) => pairOf(pieces[p]?.[place]));
    return {
      kind: 'point',
      rule: { x: rule?.x.text ?? '', y: rule?.y.text ?? '' },
      moves: of(range.rules.moves),
      steps: of(stepsOf(range.rules)),
    };
  }
  if (seam === undefined || !plan?.outline.some((edge) => edge.seam === seam))
    return { kind: 'piece' };
  return {
    kind: 'seam',
    lengths: range.sizes.map(({ pieces }) => {
      const own = pieces[p];
      return own === undefined ? 0 : seamLength(own, seam);
    }),
  };
}

function pairOf(move: Point | undefined): [number, number] {
  return [move?.x ?? 0, move?.y ?? 0];
}
