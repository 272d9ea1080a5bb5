/** The styles that come with the engine: a block, and the parameters in which it differs. */
import type { Place } from '../errors';
import { InputError } from '../errors';
import type { LengthUnit } from '../units';
import type { Block, ParameterDefinition } from './block';
import { QUARTER_SKIRT } from './quarter-skirt';

/** One parameter as a style or a caller sets it: a number with or without unit, or a formula. */
export interface Setting {
  readonly parameter: string;
  readonly value: string;
  /** Why this value: shown beside the parameter. */
  readonly note: string;
  /** Where it was written, for messages. */
  readonly place: { readonly file?: string; readonly row?: number; readonly option?: string };
  /** Unit of a bare number; the chart's where it is not given. */
  readonly unit?: LengthUnit;
}

export interface Style {
  readonly name: string;
  readonly description: string;
  readonly block: Block;
  readonly settings: readonly Setting[];
}

export const STYLES: readonly Style[] = [
  {
    name: 'pencil',
    description: 'quarter method, tapered from the hip to the hem',
    block: QUARTER_SKIRT,
    settings: [],
  },
  {
    name: 'straight',
    description: 'quarter method, straight from the hip to the hem',
    block: QUARTER_SKIRT,
    settings: [
      {
        parameter: 'hem_taper',
        value: '0 in',
        note: 'common practice, no source: the hem of a straight skirt is its hip',
        place: {},
      },
    ],
  },
];

/** A style of the engine by name. Throws InputError `style-unknown` naming those there are. */
export function findStyle(name: string, place: Place = { option: '--style' }): Style {
  const style = STYLES.find((candidate) => candidate.name === name);
  if (style !== undefined) return style;
  throw new InputError('style-unknown', {
    what: 'there is no style of this name',
    allowed: `${STYLES.map((s) => s.name).join(', ')}, or a style file ending in .csv`,
    got: name,
    place,
  });
}

/** The definition of a parameter. Throws InputError `parameter-unknown` naming those there are. */
export function findParameter(style: Style, setting: Setting): ParameterDefinition {
  const definition = style.block.parameters.find((p) => p.name === setting.parameter);
  if (definition !== undefined) return definition;
  throw new InputError('parameter-unknown', {
    what: `style ${style.name} has no parameter of this name`,
    allowed: style.block.parameters.map((p) => p.name).join(', '),
    got: setting.parameter,
    place: setting.place,
  });
}

/** The parameter's default in a style: the style's own setting, or the block's default. */
export function defaultOf(
  style: Style,
  definition: ParameterDefinition,
): { readonly value: string; readonly source: string } {
  const own = style.settings.findLast((setting) => setting.parameter === definition.name);
  return own === undefined
    ? { value: definition.value, source: definition.source }
    : { value: own.value, source: own.note };
}
