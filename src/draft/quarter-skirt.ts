/**
 * The skirt by the quarter method: half a front on the fold and half a back with a center-back
 * seam, each a quarter of the girths with one dart at the middle of its waist edge.
 *
 * Common practice, no source: quarter measures plus dart and ease, the dart centered on the waist
 * edge, the rest of the hip-waist difference taken out in one curve at the side.
 */
import { COMMON_PARAMETERS, parameterTable } from './parameter-table';
import quarterCsv from './quarter-parameters.csv';
import { skirtSeams } from './skirt-seams';
import { skirtPanel } from './skirt-traits';
import { HIP_CURVE } from './shaped-skirt/side';
import { PANEL_TRUING } from './shaped-skirt/panel-truing';
import { TRUED_VALUES, truedQuarter } from './trued-quarter';
import { panelCutting } from './block';
import { makingOf } from './making';
import type { Block, BlockLayout, BlockPiece, PointDefinition, RangeFacts } from './block';
import type { LengthLines, LineBounds, SideEnds } from './length-lines';
import {
  lengthLineMarks,
  lengthLinePoints,
  lengthLines,
  lineDepths,
  lineValues,
  onLine,
} from './length-lines';

/**
 * Points of one quarter. The side from waist to hip is a parabola written as a cubic: its axis is
 * horizontal and it is vertical at the hip line, so the hip is the widest place and the bulge from
 * the chord is exactly a quarter of the side take-up.
 */
function quarterPoints(panel: 'front' | 'back'): readonly PointDefinition[] {
  const intake = `${panel}_dart_intake`;
  return [
    { name: 'center_waist', x: '0', y: '0' },
    { name: 'dart_inner', x: `dart_center.x - ${intake}/2`, y: '0' },
    { name: 'dart_center', x: 'side_waist.x/2', y: '0' },
    { name: 'dart_tip', x: 'dart_center.x', y: `${panel}_dart_length` },
    { name: 'dart_outer', x: `dart_center.x + ${intake}/2`, y: '0' },
    { name: 'side_waist', x: `waist_girth/4 + waist_ease/4 + ${intake}`, y: '0' },
    {
      name: 'side_waist_handle',
      x: 'side_waist.x + 2/3*(side_hip.x - side_waist.x)',
      y: 'side_hip.y/3',
      handle: true,
    },
    { name: 'side_hip_handle', x: 'side_hip.x', y: '2/3*side_hip.y', handle: true },
    { name: 'side_hip', x: 'hip_girth/4 + hip_ease/4', y: 'waist_to_hip' },
    { name: 'side_hem', x: 'side_hip.x - hem_taper', y: 'skirt_length' },
    { name: 'center_hem', x: '0', y: 'skirt_length' },
    { name: 'center_hip', x: '0', y: 'waist_to_hip' },
  ];
}

function quarter(panel: 'front' | 'back', lines: LengthLines): BlockPiece {
  const center = { from: 'center_hem', to: 'center_waist', seam: `center_${panel}` };
  return {
    name: panel,
    cuttings: panelCutting(panel),
    points: [...quarterPoints(panel), ...lengthLinePoints(lines, sideEnds)],
    outline: [
      { kind: 'line', from: 'center_waist', to: 'dart_inner', seam: 'waist' },
      {
        kind: 'dart',
        name: 'dart',
        from: 'dart_inner',
        tip: 'dart_tip',
        to: 'dart_outer',
        seam: 'waist',
      },
      { kind: 'line', from: 'dart_outer', to: 'side_waist', seam: 'waist' },
      HIP_CURVE,
      { kind: 'line', from: 'side_hip', to: 'side_hem', seam: 'side' },
      { kind: 'line', from: 'side_hem', to: 'center_hem', seam: 'hem' },
      panel === 'front' ? { kind: 'fold', ...center } : { kind: 'line', ...center },
    ],
    marks: [{ name: 'hip-line', through: ['center_hip', 'side_hip'] }, ...lengthLineMarks(lines)],
  };
}

/** Below the hip line the side is ruled; above it, it is the parabola that is vertical there. */
function sideEnds(depths: { readonly length: string; readonly hipDepth: string }): SideEnds {
  const above = `(side_hip.y - ${depths.hipDepth})/side_hip.y`;
  return {
    length: onLine('side_hip', 'side_hem', depths.length),
    hipDepth: { x: `side_hip.x - (side_hip.x - side_waist.x)*(${above})^2`, y: depths.hipDepth },
  };
}

const LINE_BOUNDS: LineBounds = {
  curved: ['waist_to_hip'],
  aboveHem: ['hem_allowance'],
  darts: ['front_dart_length', 'back_dart_length'],
  drops: [],
  lift: () => 0,
};

function layout(facts: RangeFacts): BlockLayout {
  return facts.alwaysZero('trued') ? ruledLayout(facts) : truedLayout(facts);
}

/** The panels in the lines of the shaped skirt, which have their zip allowance. */
function truedLayout(facts: RangeFacts): BlockLayout {
  const lines = lengthLines(facts, LINE_BOUNDS);
  const pieces = (['front', 'back'] as const).map((panel) =>
    skirtPanel(truedQuarter(panel, facts, lines)),
  );
  return {
    ...{ pieces, truing: PANEL_TRUING, derived: [] },
    values: [...TRUED_VALUES, ...lineValues(lines)],
    seams: skirtSeams(pieces),
  };
}

function ruledLayout(facts: RangeFacts): BlockLayout {
  const lines = lengthLines(facts, LINE_BOUNDS);
  const back = quarter('back', lines);
  const pieces: readonly BlockPiece[] = [
    skirtPanel(quarter('front', lines)),
    skirtPanel({
      ...back,
      points: [
        ...back.points,
        { name: 'zip_waist', x: '-zip_allowance', y: '0' },
        { name: 'zip_hem', x: '-zip_allowance', y: 'skirt_length' },
      ],
      marks: [
        ...back.marks,
        { name: 'zip-allowance', through: ['center_waist', 'zip_waist', 'zip_hem', 'center_hem'] },
      ],
    }),
  ];
  return {
    ...{ pieces, truing: [], derived: [], seams: skirtSeams(pieces) },
    values: lineValues(lines),
  };
}

/** The block of the styles `pencil` and `straight`: its points as a hand draws them, unless they are trued. */
export const QUARTER_SKIRT: Block = {
  name: 'quarter-skirt',
  making: makingOf('quarter-skirt'),
  parameters: [...parameterTable(quarterCsv), ...COMMON_PARAMETERS],
  values: [],
  sums: [],
  layout,
  decide: (facts) => {
    const lines = lengthLines(facts, LINE_BOUNDS);
    const key = [
      ...['trued', 'hem_taper'].map(facts.alwaysZero),
      ...[lines.length, lines.hipDepth].map((depth) => depth === undefined),
    ];
    return { key: key.join(), values: lineDepths(lines) };
  },
};
