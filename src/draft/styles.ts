/** The styles that come with the engine: a block, and the parameters in which it differs. */
import type { Place } from '../errors';
import { recognizeMeasurement } from '../chart/vocabulary';
import { meantName } from '../table/name-match';
import type { Block, ParameterDefinition } from './block';
import { NO_LENGTH, both } from './market-value';
import type { MarketValue } from './market-value';
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

/** Settings of a preset, each with the source of its value. */
function preset(settings: readonly (readonly [string, MarketValue, string])[]): readonly Setting[] {
  return settings.map(([parameter, value, note]) => ({ parameter, value, note, place: {} }));
}

const COMMON_PRACTICE = 'common practice, no source';
const METRIC = 'a published metric skirt block, read in 2018: darts of 2 and 4 cm in every size';

/** Every style of the engine, in the order in which they are listed to a user. */
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
    settings: preset([
      ['hem_taper', NO_LENGTH, `${COMMON_PRACTICE}: the hem of a straight skirt is its hip`],
    ]),
  },
  {
    name: 'fixed-dart',
    description: 'metric block: the same darts in every size; straight',
    block: SHAPED_SKIRT,
    settings: preset([
      ['hip_ease', both('3 cm', '1 1/4 in'), METRIC],
      ['side_shift', both('0.75 cm', '1/4 in'), METRIC],
      ['center_back_drop', NO_LENGTH, METRIC],
      ['front_intake', both('2 cm', '3/4 in'), METRIC],
      ['back_intake', both('4 cm', '1 1/2 in'), METRIC],
      [
        'front_side_take_up',
        'front_hip_width - waist_edge/4 - front_intake',
        `${COMMON_PRACTICE}: each sewn waist panel is a quarter`,
      ],
      ['front_darts', '1', METRIC],
      ['back_darts', '2', METRIC],
      ['front_dart_position', '2/3', 'from memory: a third in from the side'],
      ['front_dart_length', both('10 cm', '4 in'), `${COMMON_PRACTICE}: 10 cm`],
    ]),
  },
  {
    name: 'shared-drop',
    description: 'side and darts share the hip-waist difference; straight',
    block: SHAPED_SKIRT,
    settings: [],
  },
  {
    name: 'shared-pencil',
    description: 'shared drop, tapered to the hem, with a vent at center back',
    block: SHAPED_SKIRT,
    settings: preset([
      ['hem_taper', both('2 cm', '3/4 in'), `${COMMON_PRACTICE}: 1 to 3 cm an edge`],
      [
        'vent_length',
        'stride_opening',
        'derived: as high as the wanted stride needs it, 15 cm at least',
      ],
      [
        'vent_width',
        both('4 cm', '1 1/2 in'),
        'Threads magazine no. 164: 1 1/2 in, upper edge at 45 degrees',
      ],
    ]),
  },
  {
    name: 'shared-a-line',
    description: 'shared drop, flared at the side and by closing half the dart',
    block: SHAPED_SKIRT,
    settings: preset([
      [
        'hem_taper',
        both('-3 cm', '-1 1/4 in'),
        `${COMMON_PRACTICE}: the side flares out below the hip`,
      ],
      ['dart_closing', '0.5', `${COMMON_PRACTICE}: part of the dart closed into the hem`],
      ['front_darts', '1', 'one dart a panel to close'],
      ['back_darts', '1', 'one dart a panel to close'],
    ]),
  },
];

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
