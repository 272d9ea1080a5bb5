/**
 * The shaped skirt: the hip-waist difference shared between side and darts as the style says, every
 * seam trued in every size.
 */
import type { Block, RangeFacts, ValueDefinition } from '../block';
import { makingOf } from '../making';
import { panelPiece } from './panel';
import type { LengthLines, LineBounds } from '../length-lines';
import { lengthLines, lineDepths, lineValues } from '../length-lines';
import type { Panel, PanelShape } from './panel-shape';
import { dartNames, lastDart } from './panel-shape';
import { skirtSeams } from '../skirt-seams';
import { skirtPanel } from '../skirt-traits';
import { derivedPieces } from './derived-pieces';
import { COMMON_PARAMETERS, parameterTable } from '../parameter-table';
import parametersCsv from './parameters.csv';
import type { Vent } from './vent';
import { PANEL_TRUING } from './panel-truing';
import { TAPER_VALUES } from './taper';
import { BAND_LENGTH } from './waistband';

const VALUES: readonly ValueDefinition[] = [
  // The ease of the waist is that of the finished one. A band, waist_finish = 1, is as long as that, and
  // the edge of the skirt is longer by what is eased into it; facing and plain edge take in nothing.
  {
    name: 'eased_in',
    quantity: 'length',
    formula: 'waist_finish*(2 - waist_finish)*band_ease',
  },
  { name: 'waist_edge', quantity: 'length', formula: 'waist_girth + waist_ease + eased_in' },
  // Half of the finished hip less half of the waist edge: what side and darts share.
  {
    name: 'half_drop',
    quantity: 'length',
    formula: '(hip_girth + hip_ease)/2 - waist_edge/2',
  },
  {
    name: 'front_hip_width',
    quantity: 'length',
    formula: 'hip_girth/4 + hip_ease/4 - side_shift',
  },
  { name: 'back_hip_width', quantity: 'length', formula: 'hip_girth/4 + hip_ease/4 + side_shift' },
  ...TAPER_VALUES,
];

/**
 * The block of all styles but those of the quarter method: none, one or two darts a panel, flare, vent,
 * zip, waist finish and lining as its parameters say.
 */
export const SHAPED_SKIRT: Block = {
  name: 'shaped-skirt',
  making: makingOf('shaped-skirt'),
  parameters: [...parameterTable(parametersCsv), ...COMMON_PARAMETERS],
  values: [...VALUES, BAND_LENGTH],
  sums: [{ parameters: ['side_share', 'back_dart_share', 'front_dart_share'], sum: 1 }],
  layout: (facts) => {
    const lines = lengthLines(facts, lineBounds(facts));
    const front = skirtPanel(panelPiece(shapeOf('front', facts, lines)));
    const back = skirtPanel(panelPiece(shapeOf('back', facts, lines)));
    const derived = derivedPieces(front, back, facts);
    return {
      pieces: [front, back],
      values: lineValues(lines),
      truing: PANEL_TRUING,
      derived,
      seams: skirtSeams([front, back, ...derived.map(({ plan }) => plan)]),
    };
  },
  decide: (facts) => {
    const lines = lengthLines(facts, lineBounds(facts));
    const { lines: _, ...shape } = shapeOf('back', facts, lines);
    const key = [
      ...Object.values(shape),
      dartsOf('front', facts),
      ...[lines.length, lines.hipDepth].map((depth) => depth === undefined),
      ...['waist_finish', 'lining'].map(facts.atBase),
    ];
    return { key: key.join(), values: lineDepths(lines) };
  },
};

function dartsOf(panel: Panel, { atBase, alwaysZero }: RangeFacts): PanelShape['darts'] {
  if (alwaysZero(`${panel}_intake`)) return 0;
  const asked = atBase(`${panel}_darts`);
  const wide = atBase(`${panel}_intake`) > atBase(`${panel}_dart_limit`);
  return asked === 0 ? (wide ? 2 : 1) : asked === 1 ? 1 : 2;
}

/** Below the hip a side that tapers begins with a curve, which a flare lifts. */
function lineBounds(facts: RangeFacts): LineBounds {
  const { alwaysZero } = facts;
  // The curve is followed unless it is turned with a flare.
  const isFollowed = alwaysZero('dart_closing') && !alwaysZero('taper_blend');
  const isTapered = !alwaysZero('hem_taper') && !isFollowed;
  return {
    curved: ['waist_to_hip', ...(isTapered ? ['taper_start', 'taper_blend'] : [])],
    aboveHem: ['hem_allowance', 'vent_length'],
    darts: PANELS.flatMap((panel) =>
      dartNames({ darts: dartsOf(panel, facts) }).map((dart) => `${panel}_${dart}_length`),
    ),
    drops: PANELS.map((panel) => `center_${panel}_drop`),
    lift: (value) =>
      Math.max(...PANELS.map((panel) => liftOf(panel, dartsOf(panel, facts), value))),
  };
}

/**
 * A dart's mouth over its length is the slope by which closing it about its tip turns the panel up to the
 * side. The tip lies no nearer to the center than the middle of the mouth.
 */
function liftOf(panel: Panel, darts: PanelShape['darts'], value: (name: string) => number): number {
  if (darts === 0) return 0;
  const of = (name: string): number => value(`${panel}_${name}`);
  const dart = lastDart({ darts });
  const slope = of('intake') / darts / of(`${dart}_length`);
  const waist = of('hip_width') - of('side_take_up');
  const beyondTip = of('hip_width') - of(`${dart}_position`) * waist;
  return Math.max(0, value('dart_closing') * slope * beyondTip);
}

const PANELS = ['front', 'back'] as const;

function shapeOf(panel: Panel, facts: RangeFacts, lines: LengthLines): PanelShape {
  const { alwaysZero } = facts;
  const darts = dartsOf(panel, facts);
  return {
    panel,
    darts,
    tapered: !alwaysZero('hem_taper'),
    taperedBelowHip: !alwaysZero('taper_start'),
    blended: !alwaysZero('hem_taper') && !alwaysZero('taper_blend'),
    flared: darts > 0 && !alwaysZero('dart_closing'),
    vent: panel === 'back' ? ventOf(facts) : 'none',
    highHip: true,
    lines,
  };
}

function ventOf({ alwaysZero }: RangeFacts): Vent {
  if (alwaysZero('vent_length')) return 'none';
  return alwaysZero('vent_width') ? 'slit' : 'extension';
}
