/**
 * The lining of a panel: the panel with tucks for darts, more room from the hip down, and shorter.
 * It reaches up to the waist seam. Its center is a plain seam, left open along the zip.
 */
import { cubicLength } from '../../geometry/cubic';
import type { Point } from '../../geometry/point';
import { add, distance, point, quarterTurn, scale, subtract, unit } from '../../geometry/point';
import { segmentLength } from '../../geometry/segment';
import { dartCap } from '../../pattern/dart-cap';
import type { DartEdge, Edge, MarkedLine, Piece } from '../../pattern/piece';
import { edgeSegments, pieceNamed, pointOf, seamLength } from '../../pattern/piece';
import { skirtPlan } from '../skirt-traits';
import type { BlockPiece, DerivedPiece } from '../block';

/**
 * The lining of a panel, with the panel's names for its points. A back with a vent is the wearer's
 * right one, whose extension lies under; the left one is cut away along the mark to where its own
 * extension ends, folded in at the center line.
 */
export function lining(panel: BlockPiece): DerivedPiece {
  const darts = panel.outline.filter((edge) => edge.kind === 'dart');
  const edges = outline(panel);
  const onFold = panel.name === 'front';
  const vented = edges.some(({ from }) => from === 'vent_hem');
  const handles = edges.flatMap((edge) => (edge.kind === 'cubic' ? [edge.leave, edge.arrive] : []));
  const pointNames = [
    ...edges.flatMap((edge) =>
      edge.kind === 'cubic' ? [edge.from, edge.leave, edge.arrive] : [edge.from],
    ),
    'center_hip',
    ...(vented ? ['left_vent_top', 'left_vent_hem'] : []),
    ...darts.flatMap(({ from, to }) => [`${from}_tuck`, `${to}_tuck`]),
  ];
  return {
    plan: skirtPlan({
      name: `${panel.name}_lining`,
      part: 'lining',
      cuttings: [{ cloth: 'lining', count: onFold ? 1 : 2, onFold }],
      pointNames,
      handles: new Set(handles),
      outline: edges,
      marks: [
        { name: 'hip-line', through: ['center_hip', 'side_hip'] },
        ...darts.flatMap(({ from, to }) => [from, to].map(tuckMark)),
        ...(vented
          ? [
              {
                name: 'left-back-edge' as const,
                through: ['vent_top', 'left_vent_top', 'left_vent_hem'],
              },
            ]
          : []),
      ],
    }),
    points: (panels, value) => {
      const shell = pieceNamed(panels, panel.name);
      const moved = new Map([
        ...sideAndHem(shell, value('lining_hip_room'), value('lining_shorter')),
        ...(vented ? ventEnds(shell, value('lining_shorter')) : []),
        ...darts.flatMap((dart) => tuck(shell, dart, value('tuck_length'), value('press_to_side'))),
      ]);
      return pointNames.map((name) => moved.get(name) ?? pointOf(shell, name));
    },
  };
}

function tuckMark(leg: string): MarkedLine {
  return { name: 'tuck', through: [leg, `${leg}_tuck`] };
}

/** The panel's outline, zip allowance left off and each dart's mouth filled. */
function outline(panel: BlockPiece): readonly Edge[] {
  return panel.outline.flatMap((edge): readonly Edge[] => {
    if (edge.kind !== 'dart') return [edge];
    const cap = `${edge.name}_fold`;
    return [
      { kind: 'line', from: edge.from, to: cap, seam: 'tuck' },
      { kind: 'line', from: cap, to: edge.to, seam: 'tuck' },
    ];
  });
}

type Places = readonly (readonly [name: string, at: Point])[];

/** The points of the side from the hip line to where its straight end begins, handles among them. */
const MOVED_OUT = [
  'side_hip_handle',
  'side_hip',
  'side_taper',
  'side_blend_upper_handle',
  'side_blend_lower_handle',
  'side_blend',
];

/**
 * The side from hip to hem moved out by `room`, square to the side at the hip; above the hip it
 * runs in to the panel's own side at the waist. Each side seam is as much shorter than the panel's
 * as the lining is, since only so do front and back stay equal.
 */
function sideAndHem(shell: Piece, room: number, shorter: number): Places {
  const at = (name: string): Point => pointOf(shell, name);
  const out = scale(quarterTurn(unit(subtract(at('side_hip'), at('side_hip_handle')))), -room);
  const moved = new Map(
    MOVED_OUT.filter((name) => shell.plan.index.has(name)).map((name) => [
      name,
      add(at(name), out),
    ]),
  );
  const side = shell.plan.outline.filter(({ seam }) => seam === 'side');
  const [, ...belowHip] = side;
  const end = side.at(-1)?.from ?? 'side_hip';
  const hip = moved.get('side_hip') ?? at('side_hip');
  const curve = cubicLength({
    from: at('side_waist'),
    leave: at('side_waist_handle'),
    arrive: moved.get('side_hip_handle') ?? hip,
    to: hip,
  });
  // What is moved out keeps its length.
  const between = belowHip
    .slice(0, -1)
    .flatMap((edge) => edgeSegments(shell, edge))
    .reduce((sum, segment) => sum + segmentLength(segment), 0);
  const down = unit(subtract(at('side_hem'), at(end)));
  const rest = seamLength(shell, 'side') - shorter - curve - between;
  const hem = add(moved.get(end) ?? at(end), scale(down, rest));
  const center = point(0, at('center_hem').y - shorter);
  const third = hem.x / 3;
  return [
    ...moved,
    ['side_hem', hem],
    ['side_hem_handle', add(hem, scale(quarterTurn(down), third))],
    ['center_hem_handle', point(third, center.y)],
    ['center_hem', center],
  ];
}

/** The extension as in the shell down to the lining's hem, and its mirror image in the center line. */
function ventEnds(shell: Piece, shorter: number): Places {
  const lowest = pointOf(shell, 'center_hem').y - shorter;
  const end = (name: string): Point => {
    const { x, y } = pointOf(shell, name);
    return point(x, Math.min(y, lowest));
  };
  const left = ({ x, y }: Point): Point => point(-x, y);
  const [top, outer, hem] = [end('vent_top'), end('vent_top_outer'), end('vent_hem')];
  return [
    ['vent_top', top],
    ['vent_top_outer', outer],
    ['vent_hem', hem],
    ['left_vent_top', left(outer)],
    ['left_vent_hem', left(hem)],
  ];
}

/**
 * A tuck is the dart's upper part, sewn along its legs and open below. It is pressed the other way
 * than the shell's dart, so that the two do not lie on each other.
 */
function tuck(shell: Piece, dart: DartEdge, long: number, pressToSide: number): Places {
  const tip = pointOf(shell, dart.tip);
  const end = (leg: string): Point => {
    const from = pointOf(shell, leg);
    const down = subtract(tip, from);
    return add(from, scale(unit(down), Math.min(long, distance(from, tip))));
  };
  return [
    [`${dart.name}_fold`, dartCap(shell, dart, pressToSide < 0.5 ? 'side' : 'center')],
    ...[dart.from, dart.to].map((leg) => [`${leg}_tuck`, end(leg)] as const),
  ];
}
