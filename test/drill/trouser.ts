/**
 * A trouser of two quarters, invented for tests: a garment that the engine knows nothing of, as a
 * block whose pieces, edges, notches and seams are data.
 */
import type { Block, BlockPiece, ParameterDefinition } from '../../src/draft/block';
import type { StyleChoice } from '../../src/draft/style-file';
import type { Edge, EdgeTraits, NotchRule } from '../../src/pattern/piece';
import { seamPair } from '../../src/pattern/seam-pair';

const INVENTED = 'invented for tests';

function parameter(name: string, value: string, meaning: string): ParameterDefinition {
  return {
    name,
    quantity: 'length',
    value,
    least: '0 cm',
    most: '50 cm',
    meaning,
    source: INVENTED,
  };
}

/** Edges of the whole piece have one allowance each, in mm; the hem is turned up. */
const EDGES: ReadonlyMap<string, EdgeTraits> = new Map([
  ['waist', { allowance: 10, finish: 'plain' }],
  ['side', { allowance: 15, finish: 'pressed-open' }],
  ['hem', { allowance: 'turn_up', finish: 'hem' }],
  ['inseam', { allowance: 15, finish: 'pressed-open' }],
  ['crotch', { allowance: 12, finish: 'plain' }],
]);

function line(from: string, to: string, seam: string): Edge {
  return { kind: 'line', from, to, seam };
}

/** Half a front or back: the crotch reaches beyond the center by a share of the hip. */
function quarter(name: 'front' | 'back', share: string, marks: 1 | 2): BlockPiece {
  const notch = (what: string, point: string): NotchRule => ({
    name: what,
    marks,
    place: { by: 'joint', point, beside: 'after' },
  });
  return {
    name,
    cuttings: [{ cloth: 'shell', count: 2, onFold: false }],
    edges: EDGES,
    grain: 'down',
    notches: [notch('hip-line', 'hip_side'), notch('knee', 'knee_in')],
    drillHoles: [{ dart: 'dart' }],
    values: [{ name: 'rise', quantity: 'length', formula: 'waist_height - crotch_height' }],
    points: [
      { name: 'center', x: '0 cm', y: '0 cm' },
      { name: 'dart_in', x: 'waist_girth/8 - dart_intake/2', y: '0 cm' },
      { name: 'dart_tip', x: 'waist_girth/8', y: 'rise/2' },
      { name: 'dart_out', x: 'waist_girth/8 + dart_intake/2', y: '0 cm' },
      { name: 'waist_side', x: 'waist_girth/4 + dart_intake', y: '0 cm' },
      { name: 'hip_side', x: 'hip_girth/4 + ease/4', y: '2/3*rise' },
      { name: 'hem_side', x: 'hip_side.x - taper', y: 'waist_height - 3 cm' },
      { name: 'hem_in', x: `taper - hip_girth*${share}`, y: 'hem_side.y' },
      { name: 'knee_in', x: `taper/2 - hip_girth*${share}`, y: '(crotch.y + hem_in.y)/2' },
      { name: 'crotch', x: `-hip_girth*${share}`, y: 'rise + 1 cm' },
      { name: 'crotch_out', x: 'crotch.x/2', y: 'crotch.y', handle: true },
      { name: 'seat_in', x: '0 cm', y: 'crotch.y - rise/6', handle: true },
      { name: 'seat', x: '0 cm', y: 'rise/2' },
    ],
    outline: [
      line('center', 'dart_in', 'waist'),
      {
        kind: 'dart',
        name: 'dart',
        from: 'dart_in',
        tip: 'dart_tip',
        to: 'dart_out',
        seam: 'waist',
      },
      line('dart_out', 'waist_side', 'waist'),
      line('waist_side', 'hip_side', 'side'),
      line('hip_side', 'hem_side', 'side'),
      line('hem_side', 'hem_in', 'hem'),
      line('hem_in', 'knee_in', 'inseam'),
      line('knee_in', 'crotch', 'inseam'),
      {
        kind: 'cubic',
        from: 'crotch',
        leave: 'crotch_out',
        arrive: 'seat_in',
        to: 'seat',
        seam: 'crotch',
      },
      line('seat', 'center', 'crotch'),
    ],
    marks: [],
  };
}

const BLOCK: Block = {
  name: 'trouser-quarter',
  parameters: [
    parameter('ease', '4 cm', 'added to the hip, over the whole girth'),
    parameter('taper', '5 cm', 'taken off each edge of the leg down to the hem'),
    parameter('dart_intake', '2.5 cm', 'width of each dart'),
    parameter('turn_up', '4 cm', 'depth of the turn-up at the hem'),
  ],
  values: [],
  sums: [],
  making: [],
  layout: () => ({
    pieces: [quarter('front', '1/16', 1), quarter('back', '1/9', 2)],
    truing: [],
    derived: [],
    seams: [
      seamPair('side', both('side'), { way: 'same', runsOn: [false, false] }),
      seamPair('inseam', both('inseam'), { way: 'same', runsOn: [false, false] }),
      // Left and right meet along the crotch, and the waist runs on across it.
      ...(['front', 'back'] as const).map((name) =>
        seamPair(`${name} crotch`, [oneOf(name, 'crotch'), oneOf(name, 'crotch')], {
          way: 'same',
          runsOn: [false, true],
        }),
      ),
    ],
  }),
};

function oneOf(piece: string, edge: string) {
  return { edges: [{ piece, edge }] };
}

function both(edge: string) {
  return [oneOf('front', edge), oneOf('back', edge)] as const;
}

/** The trouser as a style that a caller brings along. */
export const TROUSER: StyleChoice = {
  style: { name: 'trouser', description: INVENTED, block: BLOCK, settings: [] },
  settings: [],
};
