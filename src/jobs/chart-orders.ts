/** Lines of a chart that ask for something a chart does not decide. */
import type { SizeChart } from '../chart/size-chart';
import { recognizeMeasurement } from '../chart/vocabulary';
import type { ParameterDefinition } from '../draft/block';
import type { Style } from '../draft/styles';
import { DEFAULT_STYLE } from '../draft/default-style';
import { STYLES } from '../draft/styles';
import { InputError } from '../errors';
import { matchName, matchSize } from '../table/name-match';
import { labelKey } from '../table/label';
import type { SaidLine } from '../table/said-line';
import { allStated } from '../table/said-line';
import { parseNumberCell } from '../table/number-cell';
import { seemsAllowance, seemsEased } from '../table/seeming';
import { REMARK, isSeeming } from '../table/statements';
import { excerpt } from '../table/tidy-text';

/**
 * Throws InputError `bad-option` for a chart that states a length of the body or of the skirt outside
 * its table, a seam allowance, or a style of the engine
 * where the usual one is drafted: whoever wrote the line would take the result for what it says.
 */
export function refuseChartOrders({ comments }: SizeChart, { name, block }: Style): void {
  const allowance = comments.find(
    (line) =>
      allStated([line], 'allowance').length > 0 ||
      isSeeming(line, { seems: seemsAllowance, also: ['title'] }),
  );
  if (allowance !== undefined) {
    throw new InputError('bad-option', {
      what: 'the chart states a seam allowance, which is not taken from a chart',
      allowed: `parameters such as side_allowance, in a style file or set for the call; ${REMARK}`,
      got: excerpt(allowance.text),
      place: allowance.place,
    });
  }
  refuseLengths(comments, block.parameters);
  const eased = comments.find((line) => isSeeming(line, { seems: seemsEased, also: ['title'] }));
  if (eased !== undefined) {
    throw new InputError('bad-option', {
      what: 'the chart seems to have ease in it, or to ask for ease, which is not taken from a chart',
      allowed: `measurements of bodies; hip_ease and waist_ease in a style file or set for the call; ${REMARK}`,
      got: excerpt(eased.text),
      place: eased.place,
    });
  }
  const names = STYLES.map((style) => style.name);
  const wanted = allStated(comments, 'based on').find(
    ({ text }) => ![undefined, name].includes(matchName(text, names)),
  );
  if (wanted === undefined || name !== DEFAULT_STYLE) return;
  throw new InputError('bad-option', {
    what: `the chart names another style than is drafted, and a style is not taken from a chart`,
    allowed: 'the name of the style, or a style file, asked for with the call',
    got: wanted.typed,
    place: { ...wanted.place, field: 'style' },
  });
}

/**
 * Throws InputError `rule-contradicted` for a chart with a line `# base: 10` where another size is the
 * base: whoever wrote the line would take the rules for those that count from there.
 */
export function refuseOtherBase({ comments }: SizeChart, base: string): void {
  const stated = allStated(comments, 'base').find(
    ({ text }) => matchSize(text, [base]) === undefined,
  );
  if (stated === undefined) return;
  throw new InputError('rule-contradicted', {
    what: 'the chart states another base size than the one that is graded from',
    allowed: `${stated.text}, or a chart without that line`,
    got: base,
    place: { ...stated.place, field: 'base' },
  });
}

/** `skirt length: 50 cm`, `hip ease 4 cm`; without a mark only what has its unit is no other number. */
const NAMED_LENGTH =
  /^(?<label>\p{L}[\p{L} _-]*?)(?:\s*(?<mark>[:=,])|\s+(?:is|of))?\s*(?<length>[\d.,\u00BC-\u00BE\u2150-\u215E].*)$/u;

/** Throws InputError `bad-option` for a measurement or a parameter that a line gives a length. */
function refuseLengths(
  comments: readonly SaidLine[],
  parameters: readonly ParameterDefinition[],
): void {
  const known = new Set(parameters.map((parameter) => labelKey(parameter.name)));
  const isLength = (text: string): boolean => {
    const { label = '', mark, length = '' } = NAMED_LENGTH.exec(text)?.groups ?? {};
    const cell = parseNumberCell(length);
    if (cell.kind !== 'number' || (mark === undefined && cell.unit === undefined)) return false;
    return recognizeMeasurement(label) !== undefined || known.has(labelKey(label));
  };
  const seems = (text: string): boolean => isLength(text) || text.split(/[,;]\s/u).some(isLength);
  const line = comments.find((one) => isSeeming(one, { seems, also: ['title'] }));
  if (line === undefined) return;
  throw new InputError('bad-option', {
    what: 'a line outside the table gives a measurement or a parameter a length, which is not read',
    allowed:
      'a row such as skirt_length with a cell for each size; a parameter such as hip_ease in a style ' +
      `file or set for the call; ${REMARK}`,
    got: excerpt(line.text),
    place: line.place,
  });
}
