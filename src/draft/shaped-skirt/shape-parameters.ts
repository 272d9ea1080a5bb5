/** The parameters of the shaped skirt, with the defaults of the shared-drop preset. */
import type { ParameterDefinition } from '../block';
import type { MarketValue } from '../market-value';
import { NO_LENGTH, both } from '../market-value';

const COMMON_PRACTICE = 'common practice, no source';
const RUSSIAN_DRAFT = 'a published straight skirt draft of the Russian school';
const RUSSIAN_SHARES = `${RUSSIAN_DRAFT}: side 1/2, back 0.3, front 0.2`;
const METRIC_BLOCK = 'a published metric skirt block, read in 2018';

/**
 * A parameter that is a length: its value, least and most as somebody would type them, with their
 * units; the value for a metric chart and for one in inches where they differ.
 */
export function lengthParameter(
  name: string,
  [value, least, most]: readonly [MarketValue, string, string],
  meaning: string,
  source: string,
): ParameterDefinition {
  return { name, quantity: 'length', value, least, most, meaning, source };
}

function numberParameter(
  name: string,
  [value, least, most]: readonly [string, string, string],
  meaning: string,
  source: string,
): ParameterDefinition {
  return { name, quantity: 'number', value, least, most, meaning, source };
}

const GIRTHS: readonly ParameterDefinition[] = [
  lengthParameter(
    'waist_ease',
    [both('1 cm', '3/8 in'), '-10 cm', '15 cm'],
    'added to the body waist, over the whole girth: the ease of the finished waist, band or facing',
    `${COMMON_PRACTICE}: 1 cm; published drafts give 0 to 4 cm`,
  ),
  lengthParameter(
    'hip_ease',
    [both('4 cm', '1 1/2 in'), '-10 cm', '30 cm'],
    'added to the body hip, over the whole girth',
    `${COMMON_PRACTICE}: 4 to 5 cm, inside the sourced band of 0 to 7 cm`,
  ),
  lengthParameter(
    'side_shift',
    [NO_LENGTH, '-3 cm', '3 cm'],
    'each half back is wider than a quarter by this, each half front narrower; may be negative',
    'schools disagree: +0.75 cm (British), -1 cm (Russian), 0',
  ),
];

const LEVELS: readonly ParameterDefinition[] = [
  {
    ...lengthParameter(
      'waist_to_hip',
      [both('20.5 cm', '8 in'), '10 cm', '36 cm'],
      'depth of the hip line below the waist line',
      `${COMMON_PRACTICE}; measured bodies differ widely inside a size, so measure it`,
    ),
    fromChart: true,
  },
  {
    ...lengthParameter(
      'waist_to_high_hip',
      [both('10 cm', '4 in'), '5 cm', '18 cm'],
      'depth of the high-hip line below the waist line',
      COMMON_PRACTICE,
    ),
    fromChart: true,
  },
  {
    ...lengthParameter(
      'skirt_length',
      [both('60 cm', '23 1/2 in'), '20 cm', '150 cm'],
      'waist line to hem at the center',
      `${COMMON_PRACTICE}: 60 cm`,
    ),
    fromChart: true,
  },
  lengthParameter(
    'side_rise',
    [both('1.25 cm', '1/2 in'), '0 cm', '4 cm'],
    'rise of the waist at the side above the waist line',
    `${METRIC_BLOCK}: 1.25 cm`,
  ),
  lengthParameter(
    'center_front_drop',
    [NO_LENGTH, '0 cm', '4 cm'],
    'drop of the waist at center front below the waist line',
    `${COMMON_PRACTICE}; the Russian school drops it by 1.5 cm`,
  ),
  lengthParameter(
    'center_back_drop',
    [both('0.5 cm', '1/4 in'), '0 cm', '4 cm'],
    'drop of the waist at center back below the waist line',
    `${COMMON_PRACTICE}: 0.5 to 1 cm`,
  ),
];

const SUPPRESSION: readonly ParameterDefinition[] = [
  numberParameter(
    'side_share',
    ['0.5', '0', '1'],
    'share of half_drop that both panels together take in at the side',
    RUSSIAN_SHARES,
  ),
  numberParameter(
    'back_dart_share',
    ['0.3', '0', '1'],
    'share of half_drop that goes into the back darts',
    RUSSIAN_SHARES,
  ),
  numberParameter(
    'front_dart_share',
    ['0.2', '0', '1'],
    'share of half_drop that goes into the front darts',
    RUSSIAN_SHARES,
  ),
  lengthParameter(
    'front_intake',
    ['front_dart_share*half_drop', '-4 cm', '14 cm'],
    'width of all darts of the half front together; a length keeps it fixed in every size, 0 leaves ' +
      'the darts out',
    RUSSIAN_SHARES,
  ),
  lengthParameter(
    'back_intake',
    ['back_dart_share*half_drop', '-4 cm', '14 cm'],
    'width of all darts of the half back together; a length keeps it fixed in every size, 0 leaves ' +
      'the darts out',
    RUSSIAN_SHARES,
  ),
  lengthParameter(
    'front_side_take_up',
    ['side_share*half_drop/2', '-15 cm', '15 cm'],
    'what the half front takes in at the side from hip to waist',
    RUSSIAN_SHARES,
  ),
  lengthParameter(
    'back_side_take_up',
    ['half_drop - front_intake - back_intake - front_side_take_up', '-15 cm', '15 cm'],
    'what the half back takes in at the side; the default is the rest of half_drop',
    'arithmetic',
  ),
];

function dartParameters(
  panel: 'front' | 'back',
  limit: MarketValue,
  lengths: readonly [MarketValue, MarketValue, MarketValue],
  source: string,
): readonly ParameterDefinition[] {
  const position = (
    dart: string,
    value: string,
    from: string,
    which: string,
  ): ParameterDefinition =>
    numberParameter(
      `${panel}_${dart}_position`,
      [value, '0.1', '0.95'],
      `where ${which} stands on the ${panel} waist edge, as a share from the center`,
      from,
    );
  const long = (dart: string, value: MarketValue, which: string): ParameterDefinition =>
    lengthParameter(
      `${panel}_${dart}_length`,
      [value, '4 cm', '25 cm'],
      `length of ${which} of the ${panel} along its axis; not graded unless you say so`,
      source,
    );
  const thirds = `${METRIC_BLOCK}: thirds of the waist edge`;
  return [
    {
      ...numberParameter(
        `${panel}_darts`,
        ['0', '0', '2'],
        `darts in the half ${panel}: 1 or 2; 0 decides by the base size and ${panel}_dart_limit. With ` +
          `${panel}_intake = 0 it has none`,
        "the engine's own rule",
      ),
      count: true,
    },
    lengthParameter(
      `${panel}_dart_limit`,
      [limit, '1 cm', '8 cm'],
      `a single ${panel} dart wider than this in the base size is split in two`,
      `${COMMON_PRACTICE}: 3 to 3.5 cm back, 2 to 2.5 cm front; published single darts reach 3.9`,
    ),
    position('dart', '0.5', `${RUSSIAN_DRAFT}: the middle of the waist edge`, 'a single dart'),
    position('inner_dart', '1/3', thirds, 'the inner of two darts'),
    position('outer_dart', '2/3', thirds, 'the outer of two darts'),
    long('dart', lengths[0], 'a single dart'),
    long('inner_dart', lengths[1], 'the inner of two darts'),
    long('outer_dart', lengths[2], 'the outer of two darts'),
  ];
}

const DARTS: readonly ParameterDefinition[] = [
  ...dartParameters(
    'front',
    both('3.5 cm', '1 3/8 in'),
    [both('9 cm', '3 1/2 in'), both('9 cm', '3 1/2 in'), both('8 cm', '3 1/4 in')],
    `between ${RUSSIAN_DRAFT}, 8 cm, and a college handout, 10 cm`,
  ),
  ...dartParameters(
    'back',
    both('4 cm', '1 5/8 in'),
    [both('13 cm', '5 in'), both('14 cm', '5 1/2 in'), both('12.5 cm', '5 in')],
    `${RUSSIAN_DRAFT}: 13 cm; 14 and 12.5 cm for two darts from memory`,
  ),
  numberParameter(
    'half_rule',
    ['0', '0', '1'],
    "0: a dart moves by its share of the edge's grade; 1: by half of the quarter's grade",
    `${COMMON_PRACTICE} for both`,
  ),
  numberParameter(
    'axis_square',
    ['1', '0', '1'],
    '1: dart axes square to the waist edge; 0: vertical',
    'schools disagree: square (from memory), vertical (Russian school)',
  ),
  numberParameter(
    'press_to_side',
    ['0', '0', '1'],
    '0: darts are pressed toward the center; 1: toward the side',
    'Government of India, CITS Dress Making: skirt darts toward the center',
  ),
];

const SILHOUETTE: readonly ParameterDefinition[] = [
  lengthParameter(
    'hem_taper',
    [NO_LENGTH, '-25 cm', '12 cm'],
    'taken off each side edge at the hem; 0 is straight, negative flares',
    `${COMMON_PRACTICE}: the hem of a straight skirt is its hip`,
  ),
  lengthParameter(
    'taper_start',
    [NO_LENGTH, '0 cm', '30 cm'],
    'how far below the hip line the taper or flare of the side begins',
    `${COMMON_PRACTICE}: from the hip line down to 10 cm below it`,
  ),
  lengthParameter(
    'taper_blend',
    // Where the hem lies above the hip line there is no taper to blend in, but still a length.
    ['abs(skirt_length - waist_to_hip - taper_start)/4', '0 cm', '40 cm'],
    'depth of the curve by which the side turns into its taper or flare; 0 leaves a corner',
    `${COMMON_PRACTICE}: the hip curve runs on some 10 cm below the hip line`,
  ),
  numberParameter(
    'dart_closing',
    ['0', '0', '1'],
    'share of the dart nearest the side that is closed, which opens the hem across the panel',
    COMMON_PRACTICE,
  ),
  lengthParameter(
    'zip_allowance',
    [both('2 cm', '3/4 in'), '0 cm', '8 cm'],
    'allowance for the zip outside the center-back line, all along its seam; it is not graded',
    `${COMMON_PRACTICE}: 2 cm`,
  ),
];

/**
 * Girths, levels, suppression, darts and silhouette, in the order in which they are listed to a
 * user.
 */
export const SHAPED_SKIRT_PARAMETERS: readonly ParameterDefinition[] = [
  ...GIRTHS,
  ...LEVELS,
  ...SUPPRESSION,
  ...DARTS,
  ...SILHOUETTE,
];
