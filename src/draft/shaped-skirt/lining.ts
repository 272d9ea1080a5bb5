/**
 * The lining of a panel: the panel with tucks for darts, more room from the hip down, and shorter.
 * It reaches up to the waist seam. Its center is a plain seam, left open along the zip.
 */
import { cubicLength } from '../../geometry/cubic';
import { crossingsAtLevel } from '../../geometry/level';
import type { Point } from '../../geometry/point';
import { add, distance, point, quarterTurn, scale, subtract, unit } from '../../geometry/point';
import { segmentLength } from '../../geometry/segment';
import { dartCap } from '../../pattern/dart-cap';
import type { DartEdge, Edge, MarkedLine, Piece } from '../../pattern/piece';
import { edgeSegments, pieceNamed, pointOf, seamLength } from '../../pattern/piece';
import { skirtPlan } from '../skirt-traits';
import type { BlockPiece, DerivedPiece } from '../block';

/**
 * The linings of a panel, with the panel's names for its points: one, or a right and a left one of a
 * back with a vent, named as its wearer has them. The right extension lies under, and its lining ends
 * where it does; the left one is folded in at the center line, and its lining ends where it then lies.
 */
export function linings(panel: BlockPiece): readonly DerivedPiece[] {
  const lines = liningLines(panel);
  if (!lines.outline.some(({ from }) => from === 'vent_hem'))
    return [liningPiece(panel, lines, `${panel.name}_lining`)];
  return [
    liningPiece(panel, lines, `right_${panel.name}_lining`),
    liningPiece(panel, leftLines(lines), `left_${panel.name}_lining`),
  ];
}

/** What is the same in every size of a lining, and how its points come from those of the whole one. */
interface LiningLines {
  readonly outline: readonly Edge[];
  /** Cut twice as a pair, or once. */
  readonly count: 1 | 2;
  readonly placed: (whole: ReadonlyMap<string, Point>) => ReadonlyMap<string, Point>;
}

/** The panel's outline, zip allowance left off and each dart's mouth filled. */
function liningLines(panel: BlockPiece): LiningLines {
  const outline = panel.outline.flatMap((edge): readonly Edge[] => {
    if (edge.kind !== 'dart') return [edge];
    const cap = `${edge.name}_fold`;
    return [
      { kind: 'line', from: edge.from, to: cap, seam: 'tuck' },
      { kind: 'line', from: cap, to: edge.to, seam: 'tuck' },
    ];
  });
  const isOnce = outline.some(({ kind, from }) => kind === 'fold' || from === 'vent_hem');
  return { outline, count: isOnce ? 1 : 2, placed: (whole) => whole };
}

/**
 * The left back: instead of the extension, a corner is cut out of it where the extension of the shell
 * lies once it is folded in. Turned over, since it is cut once and from the right side of the cloth.
 */
function leftLines({ outline, count }: LiningLines): LiningLines {
  return {
    outline: outline.flatMap((edge): readonly Edge[] => {
      if (edge.from === 'center_hem') return [];
      return edge.kind === 'cubic' && edge.to === 'center_hem'
        ? [{ ...edge, arrive: 'vent_hem_handle', to: 'vent_hem' }]
        : [edge];
    }),
    count,
    placed: (whole) => {
      const at = (name: string): Point => placeIn(whole, name);
      const foldedIn = (name: string): Point => point(-at(name).x, at(name).y);
      const [hem, end] = [at('side_hem'), foldedIn('vent_hem')];
      const third = (hem.x - end.x) / 3;
      const square = unit(subtract(at('side_hem_handle'), hem));
      const left = new Map([
        ...whole,
        ['vent_top_outer', foldedIn('vent_top_outer')],
        ['vent_hem', end],
        ['vent_hem_handle', point(end.x + third, end.y)],
        ['side_hem_handle', add(hem, scale(square, third))],
      ]);
      return new Map([...left].map(([name, { x, y }]) => [name, point(0 - x, y)]));
    },
  };
}

function liningPiece(
  panel: BlockPiece,
  { outline, count, placed }: LiningLines,
  name: string,
): DerivedPiece {
  const darts = panel.outline.filter((edge) => edge.kind === 'dart');
  const onFold = outline.some(({ kind }) => kind === 'fold');
  const lines = panel.marks.filter(({ name }) => LENGTH_LINES.includes(name));
  const handles = outline.flatMap((edge) =>
    edge.kind === 'cubic' ? [edge.leave, edge.arrive] : [],
  );
  const pointNames = [
    ...outline.flatMap((edge) =>
      edge.kind === 'cubic' ? [edge.from, edge.leave, edge.arrive] : [edge.from],
    ),
    'center_hip',
    ...lines.flatMap(({ through }) => through),
    ...darts.flatMap(({ from, to }) => [`${from}_tuck`, `${to}_tuck`]),
  ];
  return {
    plan: skirtPlan({
      name,
      part: 'lining',
      cuttings: [{ cloth: 'lining', count, onFold }],
      pointNames,
      handles: new Set(handles),
      outline,
      marks: [
        { name: 'hip-line', through: ['center_hip', 'side_hip'] },
        ...lines,
        ...darts.flatMap(({ from, to }) => [from, to].map(tuckMark)),
      ],
    }),
    points: (panels, value) => {
      const shell = pieceNamed(panels, panel.name);
      const vented = shell.plan.index.has('vent_hem');
      const whole = new Map([
        ...shell.plan.pointNames.map((own) => [own, pointOf(shell, own)] as const),
        ...sideAndHem(shell, value('lining_hip_room'), value('lining_shorter')),
        ...(vented ? ventEnds(shell, value('lining_shorter')) : []),
        ...darts.flatMap((dart) => tuck(shell, dart, value('tuck_length'), value('press_to_side'))),
      ]);
      const places = placed(new Map([...whole, ...lineEnds(shell, whole, lines)]));
      return pointNames.map((own) => placeIn(places, own));
    },
  };
}

/** The lines end at the lining's own side, at the depth that they have on the panel. */
function lineEnds(
  shell: Piece,
  whole: ReadonlyMap<string, Point>,
  lines: readonly MarkedLine[],
): Places {
  const own = { ...shell, points: shell.plan.pointNames.map((name) => placeIn(whole, name)) };
  const side = shell.plan.outline
    .filter(({ seam }) => seam === 'side')
    .flatMap((edge) => edgeSegments(own, edge));
  return lines.flatMap(({ through }) =>
    through.slice(-1).map((name) => {
      const { y } = pointOf(shell, name);
      return [name, point(Math.max(...crossingsAtLevel(side, y)), y)] as const;
    }),
  );
}

const LENGTH_LINES: readonly MarkedLine['name'][] = ['length-line', 'hip-depth-line'];

function placeIn(places: ReadonlyMap<string, Point>, name: string): Point {
  const found = places.get(name);
  if (found === undefined) throw new RangeError(`a lining has no point ${name}`);
  return found;
}

function tuckMark(leg: string): MarkedLine {
  return { name: 'tuck', through: [leg, `${leg}_tuck`] };
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

/** The extension as in the shell, down to the lining's hem. */
function ventEnds(shell: Piece, shorter: number): Places {
  const lowest = pointOf(shell, 'center_hem').y - shorter;
  return ['vent_top', 'vent_top_outer', 'vent_hem'].map((name) => {
    const { x, y } = pointOf(shell, name);
    return [name, point(x, Math.min(y, lowest))];
  });
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
