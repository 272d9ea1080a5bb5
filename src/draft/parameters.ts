/** Which value each parameter takes: the caller's, the style file's, the chart's or the default. */
import type { Place } from '../errors';
import { InputError, readEach } from '../errors';
import type { Formula } from '../formula/formula';
import type { FormulaParser } from '../formula/own-formula';
import { ownFormula } from '../formula/own-formula';
import { parseFormula } from '../formula/parse';
import type { LengthUnit } from '../units';
import { parseLength } from '../table/number-cell';
import type { ParameterDefinition } from './block';
import { marketValue } from './market-value';
import type { Setting } from './setting';
import type { Style } from './styles';
import { defaultOf, findParameter } from './styles';

/** Who gave a value: a style or a caller, the chart's row of that name, or the block itself. */
export type Origin = 'setting' | 'chart' | 'default';

/** A parameter with the value that it takes in a range, and where that comes from. */
export interface ResolvedParameter {
  readonly definition: ParameterDefinition;
  readonly origin: Origin;
  /** The value as written; the parameter's own name where the chart gives it. */
  readonly text: string;
  /** Where the value comes from, in words. */
  readonly source: string;
  readonly place: Place;
  /** Undefined where the chart's row of this name is taken as it is. */
  readonly formula: Formula | undefined;
}

/**
 * Resolves every parameter of a style. `settings` come in rising order of precedence: the last one
 * of a name wins, and any of them goes before the chart's row. `unit` is that of the chart: bare numbers
 * are in it, and defaults follow it.
 */
export function resolveParameters(
  style: Style,
  settings: readonly Setting[],
  chartRows: ReadonlySet<string>,
  unit: LengthUnit,
): readonly ResolvedParameter[] {
  const named = readEach(settings, (setting) => ({
    ...setting,
    parameter: findParameter(style, setting).name,
  }));
  return readEach(style.block.parameters, (definition) => {
    const setting = named.findLast((s) => s.parameter === definition.name);
    if (setting !== undefined) {
      const place = { ...setting.place, parameter: definition.name };
      const text = marketValue(setting.value, unit);
      return {
        definition,
        origin: 'setting',
        text,
        source: setting.note,
        place,
        formula: valueFormula(definition, text, setting.unit ?? unit, place, parseFormula),
      };
    }
    if (definition.fromChart && chartRows.has(definition.name))
      return {
        definition,
        origin: 'chart',
        text: definition.name,
        source: 'the chart',
        place: { parameter: definition.name },
        formula: undefined,
      };
    const { value, source } = defaultOf(style, definition);
    const text = marketValue(value, unit);
    const place = { parameter: definition.name };
    return {
      definition,
      origin: 'default',
      text,
      source,
      place,
      formula: valueFormula(definition, text, unit, place, ownFormula),
    };
  });
}

/** A length typed as in a chart (`1 1/2`, `3,5 cm`) becomes millimeters, all else is a formula. */
function valueFormula(
  definition: ParameterDefinition,
  text: string,
  unit: LengthUnit,
  place: Place,
  parse: FormulaParser,
): Formula {
  if (text.trim() === '')
    throw new InputError('formula-malformed', {
      what: 'the parameter has no value',
      allowed: `${definition.least} to ${definition.most}, or a formula`,
      got: text,
      place,
    });
  const length = definition.quantity === 'length' ? parseLength(text, unit) : undefined;
  return length === undefined ? parse(text, place) : { ...ownFormula(`${length} mm`, place), text };
}
