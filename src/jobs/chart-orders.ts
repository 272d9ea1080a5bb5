/** Lines of a chart that ask for something a chart does not decide. */
import type { SizeChart } from '../chart/size-chart';
import type { Style } from '../draft/styles';
import { DEFAULT_STYLE, STYLES } from '../draft/styles';
import { InputError } from '../errors';
import { matchName } from '../table/name-match';
import { statementsIn } from '../table/statement-words';

/**
 * Throws InputError `bad-option` for a chart that states a seam allowance, or a style of the engine
 * where the usual one is drafted: whoever wrote the line would take the result for what it says.
 */
export function refuseChartOrders({ comments, file }: SizeChart, { name }: Style): void {
  const parts = comments.flatMap(statementsIn);
  const allowance = parts.find((part) => part.name === 'allowance');
  if (allowance !== undefined) {
    throw new InputError('bad-option', {
      what: 'the chart states a seam allowance, which is not taken from a chart',
      allowed: 'parameters such as side_allowance, in a style file or set for the call',
      got: allowance.typed,
      place: { file },
    });
  }
  const names = STYLES.map((style) => style.name);
  const wanted = parts.find(
    (part) => part.name === 'based on' && ![undefined, name].includes(matchName(part.text, names)),
  );
  if (wanted === undefined || name !== DEFAULT_STYLE) return;
  throw new InputError('bad-option', {
    what: `the chart names another style than is drafted, and a style is not taken from a chart`,
    allowed: 'the name of the style, or a style file, asked for with the call',
    got: wanted.typed,
    place: { file, field: 'style' },
  });
}
