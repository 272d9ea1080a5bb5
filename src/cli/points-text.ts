/** `skirtgrade help points`: the points of a style by piece. */
import { DEFAULT_STYLE } from '../draft/default-style';
import { findStyle } from '../draft/styles';
import { gradeUnchecked } from '../jobs/grade-chart';
import { STAND_IN_BASE, STAND_IN_CHART } from '../jobs/stand-in';
import { wrappedParagraph } from './text-table';

/**
 * The points that a rule may move, piece by piece in the order of the outline; handles are left out.
 * Throws InputError `style-unknown`.
 */
export function pointsText(name: string = DEFAULT_STYLE): string {
  const style = findStyle(name);
  const { range } = gradeUnchecked({
    chart: STAND_IN_CHART,
    file: 'the stand-in chart',
    base: STAND_IN_BASE,
    style: style.name,
  });
  const pieces = range.plans.map((plan) => {
    const points = plan.pointNames.filter((point) => !plan.handles.has(point));
    return `\n${plan.name}\n${wrappedParagraph(`  ${points.join(', ')}`, 2)}`;
  });
  return (
    `The points of ${style.name}, piece by piece\n` +
    pieces.join('') +
    '\n' +
    wrappedParagraph(
      'A rule sheet, `explain` and a zero name them as front.side_waist, --stack as side_waist. ' +
        'Another number of darts, another finish or no lining has other points; those of your ' +
        'skirt stand in grade-rules.csv.',
    )
  );
}
