/**
 * The shaped facing of a panel's waist: the panel with its darts closed, down to a constant depth
 * below the waist. It grades with the waist; its depth does not.
 */
import { cubicLength, cubicParameterAtLength, cubicPart } from '../../geometry/cubic';
import { parallelCubic } from '../../geometry/parallel';
import type { Point } from '../../geometry/point';
import { add, distance, quarterTurn, scale, subtract, unit } from '../../geometry/point';
import type { Cubic, Segment } from '../../geometry/segment';
import { segmentTangent } from '../../geometry/segment';
import { closeDarts } from '../../pattern/closed-darts';
import type { Edge } from '../../pattern/piece';
import { pieceNamed } from '../../pattern/piece';
import { skirtPlan } from '../skirt-traits';
import type { BlockPiece, DerivedPiece } from '../block';
import { chainPoints, curveChain } from './curve-chain';

/** mm of the lower edge in which it turns from the parallel to square at the side seam. */
const BLEND = 8;

/**
 * The facing of a panel. Its corners are `center_waist`, `side_waist`, `side_lower` and
 * `center_lower`; a closed dart leaves a joint of its name in the waist edge.
 */
export function facing(panel: BlockPiece): DerivedPiece {
  const darts = panel.outline.filter((edge) => edge.kind === 'dart').map(({ name }) => name);
  const joints = ['center_waist', ...darts, 'side_waist'];
  const lower = [
    ...['side_lower', 'blend_lower'],
    ...darts.toReversed().flatMap((dart) => [`${dart}_middle`, `${dart}_lower`]),
    'center_middle',
  ];
  const chain = curveChain(
    [...joints, ...lower, 'center_lower'],
    [...joints.slice(1).map(() => 'waist'), 'side', ...lower.map(() => 'facing_edge')],
  );
  const onFold = panel.name === 'front';
  const center: Edge = {
    kind: onFold ? 'fold' : 'line',
    from: 'center_lower',
    to: 'center_waist',
    seam: `center_${panel.name}`,
  };
  const count = onFold ? 1 : 2;
  return {
    plan: skirtPlan({
      name: `${panel.name}_facing`,
      part: 'facing',
      cuttings: [
        { cloth: 'shell', count, onFold },
        { cloth: 'interfacing', count, onFold },
      ],
      pointNames: chain.pointNames,
      handles: new Set(chain.handles),
      outline: [...chain.edges, center],
      marks: [],
    }),
    points: (panels, value) => {
      const depth = value('facing_depth');
      const closed = closeDarts(pieceNamed(panels, panel.name));
      const waist = closed.waist.map(asCurve);
      const side = sideEdge(asCurve(closed.side), depth);
      const below = lowerEdge(waist, side, depth).toReversed().map(backward);
      return chainPoints([...waist, side, ...below]);
    },
  };
}

/** Waist and side of a shaped panel are curves. Throws a RangeError for a straight edge. */
function asCurve(segment: Segment): Cubic {
  if (segment.kind === 'cubic') return segment;
  throw new RangeError('a facing is made from curves');
}

function backward({ from, leave, arrive, to }: Cubic): Cubic {
  return { kind: 'cubic', from: to, leave: arrive, arrive: leave, to: from };
}

/** The side seam down to `depth`, measured along it so that front and back edges are equal. */
function sideEdge(side: Cubic, depth: number): Cubic {
  return { kind: 'cubic', ...cubicPart(side, 0, cubicParameterAtLength(side, depth)) };
}

/**
 * The lower edge from center to side: parallel to the waist, two curves a stretch for a close fit,
 * but at the very side square to the side seam, which has turned a little from the waist down;
 * front and back then join smoothly.
 */
function lowerEdge(waist: readonly Cubic[], side: Cubic, depth: number): readonly Cubic[] {
  const last = waist.at(-1);
  if (last === undefined) return [];
  const long = cubicLength(last);
  const turn = cubicParameterAtLength(last, long - Math.min(BLEND, long / 2));
  const parallels = [...waist.slice(0, -1), cubicPart(last, 0, turn)].flatMap((curve) => [
    parallelCubic(cubicPart(curve, 0, 0.5), depth),
    parallelCubic(cubicPart(curve, 0.5, 1), depth),
  ]);
  const start = parallelCubic(cubicPart(last, turn, 1), depth);
  const square = quarterTurn(unit(segmentTangent(side, 1)));
  const third = distance(start.from, side.to) / 3;
  const toward = (from: Point, along: Point): Point => add(from, scale(unit(along), third));
  return [
    ...parallels,
    {
      kind: 'cubic',
      from: start.from,
      leave: toward(start.from, subtract(start.leave, start.from)),
      arrive: toward(side.to, square),
      to: side.to,
    },
  ];
}
