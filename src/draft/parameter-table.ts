/** The parameters of a block as a table that comes with the program: a row each, beside the formulas. */
import { bundledTable } from '../table/bundled-table';
import type { ParameterDefinition } from './block';
import commonCsv from './common-parameters.csv';
import { typedValue } from './market-value';

type Column =
  | 'parameter'
  | 'kind'
  | 'value'
  | 'in_inches'
  | 'least'
  | 'most'
  | 'meaning'
  | 'source';

/**
 * The rows of such a table. A `measurement` is a length that a row of the chart may give, a `count` a
 * whole number; a blank value is nothing, and one without `in_inches` serves every chart.
 */
export function parameterTable(csv: string): readonly ParameterDefinition[] {
  return bundledTable<Readonly<Record<Column, string>>>(csv).map(
    ({ parameter, kind, value, in_inches, ...row }): ParameterDefinition => ({
      ...row,
      name: parameter,
      quantity: kind === 'number' || kind === 'count' ? 'number' : 'length',
      value: typedValue(value, in_inches),
      ...(kind === 'measurement' && { fromChart: true }),
      ...(kind === 'count' && { count: true }),
    }),
  );
}

/** What every block has: zip, allowances for sewing at home, tolerances of finished measurements. */
export const COMMON_PARAMETERS: readonly ParameterDefinition[] = parameterTable(commonCsv);
