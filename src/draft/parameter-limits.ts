/** The allowed range of each parameter, held in every size. */
import { parseLength } from '../table/number-cell';
import { InputError } from '../errors';
import type { Place } from '../errors';
import { SAME_SUM } from '../tolerance';
import { fromMillimeters, trimmed } from '../units';
import type { SumRule } from './block';
import type { ResolvedParameter } from './parameters';

/**
 * Holds a parameter's value in one size, in mm or as a plain number, against its range. Throws
 * InputError `parameter-out-of-range` or `formula-not-finite` naming the size.
 */
export type CheckValue = (value: number, size: string) => void;

/** The check of one parameter; its range is read once, for all sizes. */
export function rangeCheck(parameter: ResolvedParameter): CheckValue {
  const { quantity, least, most, count } = parameter.definition;
  const bound = (text: string): number =>
    quantity === 'length' ? (parseLength(text, 'mm') as number) : Number(text);
  const range = { least: bound(least), most: bound(most) };
  return (value, size) => {
    if (!(value >= range.least && value <= range.most && (!count || Number.isInteger(value))))
      refuse(parameter, range, value, size);
  };
}

function refuse(
  { definition, text, place }: ResolvedParameter,
  { least, most }: { readonly least: number; readonly most: number },
  value: number,
  size: string,
): never {
  const where: Place = { ...place, size };
  if (!Number.isFinite(value))
    throw new InputError('formula-not-finite', {
      what: 'the formula gives no finite number',
      got: `${text} = ${value}`,
      place: where,
    });
  const inUnit = (number: number): string =>
    definition.quantity === 'length'
      ? `${trimmed(number, 2)} mm (${trimmed(fromMillimeters(number, 'in'), 3)} in)`
      : trimmed(number, 4);
  throw new InputError('parameter-out-of-range', {
    what: `${definition.name} is out of its range`,
    allowed: `${definition.count ? 'a whole number from ' : ''}${inUnit(least)} to ${inUnit(most)}`,
    got: `${text}${inUnit(value) === text ? '' : ` = ${inUnit(value)}`}`,
    place: where,
  });
}

/** Throws InputError `parameter-out-of-range` if the parameters do not add up. */
export function checkSum(
  { parameters, sum }: SumRule,
  value: (name: string) => number,
  size: string,
): void {
  const total = parameters.reduce((so, name) => so + value(name), 0);
  if (Math.abs(total - sum) <= SAME_SUM) return;
  throw new InputError('parameter-out-of-range', {
    what: `${parameters.join(', ')} do not add up`,
    allowed: `a sum of ${sum}`,
    got: `${parameters.map((name) => trimmed(value(name), 4)).join(' + ')} = ${trimmed(total, 4)}`,
    place: { parameter: parameters.join(', '), size },
  });
}
