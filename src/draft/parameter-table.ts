/** The parameters of a block as a table that comes with the program: a row each, beside the formulas. */
import { readSheet } from '../table/sheet';
import type { ParameterDefinition } from './block';
import commonCsv from './common-parameters.csv';
import { NO_LENGTH, both } from './market-value';

/**
 * The rows of a table `parameter,kind,value,in_inches,least,most,meaning,source`. A `measurement` is a
 * length that a row of the chart may give, a `count` a whole number; a blank value is nothing, and one
 * without `in_inches` serves every chart. Tables come with the program, so a bad one is a defect of it.
 */
export function parameterTable(csv: string): readonly ParameterDefinition[] {
  const { records } = readSheet(csv, 'parameters', ([label]) => label === 'parameter');
  return records.slice(1).map(({ cells }): ParameterDefinition => {
    const [name = '', kind, value = '', inch, least = '', most = '', meaning = '', source = ''] =
      cells;
    return {
      ...{ name, least, most, meaning, source },
      quantity: kind === 'number' || kind === 'count' ? 'number' : 'length',
      value: value === '' ? NO_LENGTH : inch === '' ? value : both(value, inch ?? ''),
      ...(kind === 'measurement' && { fromChart: true }),
      ...(kind === 'count' && { count: true }),
    };
  });
}

/** What every block has: zip, allowances for sewing at home, tolerances of finished measurements. */
export const COMMON_PARAMETERS: readonly ParameterDefinition[] = parameterTable(commonCsv);
