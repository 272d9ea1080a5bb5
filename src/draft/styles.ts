/** The styles that come with the engine: a block, and the parameters in which it differs. */
import type { Place } from '../errors';
import { recognizeMeasurement } from '../chart/vocabulary';
import { meantName } from '../table/name-match';
import type { Block, ParameterDefinition } from './block';
import type { MarketValue } from './market-value';
import { presetSettings } from './presets';
import { QUARTER_SKIRT } from './quarter-skirt';
import type { Setting } from './setting';
import { SHAPED_SKIRT } from './shaped-skirt/block';

/** A skirt that can be asked for by name. */
export interface Style {
  readonly name: string;
  readonly description: string;
  readonly block: Block;
  /** What differs from the defaults of the block. */
  readonly settings: readonly Setting[];
}

/** Every style of the engine, in the order in which they are listed to a user. */
export const STYLES: readonly Style[] = [
  style('pencil', QUARTER_SKIRT, 'quarter method, tapered from the hip to the hem'),
  style('straight', QUARTER_SKIRT, 'quarter method, straight from the hip to the hem'),
  style('fixed-dart', SHAPED_SKIRT, 'metric block: the same darts in every size; straight'),
  style('shared-drop', SHAPED_SKIRT, 'side and darts share the hip-waist difference; straight'),
  style(
    'shared-pencil',
    SHAPED_SKIRT,
    'shared drop, tapered to the hem, with a vent at center back',
  ),
  style(
    'shared-a-line',
    SHAPED_SKIRT,
    'shared drop, flared at the side and by closing half the dart',
  ),
];

/** A style with what its preset sets. */
function style(name: string, block: Block, description: string): Style {
  return { name, description, block, settings: presetSettings(name) };
}

/** The style of this name. Throws InputError `style-unknown` with those there are and the place. */
export function findStyle(name: string, place: Place = {}): Style {
  return styleOf(name, place, '');
}

/** The same where a style file could have been named. */
export function findAskedStyle(name: string, place: Place = { field: 'style' }): Style {
  return styleOf(name, place, ', or a style file ending in .csv');
}

function styleOf(name: string, place: Place, orElse: string): Style {
  const names = STYLES.map((style) => style.name);
  const found = meantName({ text: name, place }, names, {
    code: 'style-unknown',
    what: 'there is no style of this name',
    allowed: names.join(', ') + orElse,
  });
  return STYLES[names.indexOf(found)] as Style;
}

/** The definition of a parameter. Throws InputError `parameter-unknown` naming those there are. */
export function findParameter(style: Style, setting: Setting): ParameterDefinition {
  const { parameters } = style.block;
  const names = parameters.map((p) => p.name);
  // A parameter that a row of the chart may give is called as that row may be: `height` is stature.
  const row = recognizeMeasurement(setting.parameter)?.name;
  const text = row !== undefined && names.includes(row) ? row : setting.parameter;
  const found = meantName({ text, place: setting.place }, names, {
    code: 'parameter-unknown',
    what: `style ${style.name} has no parameter of this name`,
    allowed: `one of its ${names.length} parameters, which \`styles ${style.name}\` lists`,
  });
  return parameters[names.indexOf(found)] as ParameterDefinition;
}

/** The parameter's default in a style: the style's own setting, or the block's default. */
export function defaultOf(
  style: Style,
  definition: ParameterDefinition,
): { readonly value: MarketValue; readonly source: string } {
  const own = style.settings.findLast((setting) => setting.parameter === definition.name);
  return own === undefined
    ? { value: definition.value, source: definition.source }
    : { value: own.value, source: own.note };
}
