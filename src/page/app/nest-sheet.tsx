/** The sheet with the nest on it, what is shown of it, and what is known of the place looked at. */
import { useEffect, useRef, useState } from 'preact/hooks';
import type { TableLayout } from '../outline';
import { pointAt } from '../outline';
import type { SkirtView, Spot } from '../wish';
import type { Camera } from './camera';
import { Lookings } from './lookings';
import { Nest } from './nest';
import type { Shared } from './page';
import { SizeStrip } from './size-strip';
import { allSpots, SpotPanel } from './spot-panel';

/** Pixels that an arrow key moves the nest, and how much nearer a key brings it. */
const KEY_MOVE = 60;
const KEY_NEARER = 1.25;

/** The nest of the last skirt that could be graded. */
export function NestSheet(
  props: Shared & {
    readonly pinned: Spot | undefined;
    readonly onPin: (spot: Spot | undefined) => void;
  },
) {
  const { state, change, view, pinned, onPin, engine, pattern } = props;
  const [hovered, setHovered] = useState<Spot>();
  const [raised, setRaised] = useState<string>();
  const eye = useRef<{ camera: Camera; layout: TableLayout } | undefined>(undefined);
  useEffect(() => {
    if (pinned !== undefined && view !== undefined && eye.current !== undefined)
      lookAt(view, pinned, eye.current.camera, eye.current.layout);
  }, [pinned]);
  if (view === undefined) return <section class="sheet waiting" aria-label="Nest" />;
  const spot = hovered ?? pinned;
  const onKey = (event: KeyboardEvent): void => {
    const camera = eye.current?.camera;
    if (camera === undefined || event.ctrlKey || event.metaKey || event.altKey) return;
    const act = keyAct(event.key, camera, view, pinned, onPin);
    if (act === undefined) return;
    event.preventDefault();
    act();
  };
  return (
    <section class="sheet" aria-label="Nest">
      <Nest
        view={view}
        looks={state.looks}
        spot={spot}
        raised={raised}
        onHover={setHovered}
        onPin={onPin}
        onKey={onKey}
        onCamera={(camera, layout) => {
          eye.current = { camera, layout };
        }}
      />
      <SizeStrip view={view} looks={state.looks} change={change} onRaise={setRaised} />
      <Lookings {...props} view={view} camera={() => eye.current?.camera} />
      <SpotPanel view={view} spot={spot} pattern={pattern} engine={engine} onPin={onPin} />
    </section>
  );
}

function keyAct(
  key: string,
  camera: Camera,
  view: SkirtView,
  pinned: Spot | undefined,
  onPin: (spot: Spot | undefined) => void,
): (() => void) | undefined {
  const acts: Readonly<Record<string, () => void>> = {
    ArrowLeft: () => {
      camera.by(KEY_MOVE, 0);
    },
    ArrowRight: () => {
      camera.by(-KEY_MOVE, 0);
    },
    ArrowUp: () => {
      camera.by(0, KEY_MOVE);
    },
    ArrowDown: () => {
      camera.by(0, -KEY_MOVE);
    },
    '+': () => {
      camera.nearer(KEY_NEARER);
    },
    '=': () => {
      camera.nearer(KEY_NEARER);
    },
    '-': () => {
      camera.nearer(1 / KEY_NEARER);
    },
    '0': camera.fit,
    ']': () => {
      onPin(pointBeside(view, pinned, 1));
    },
    '[': () => {
      onPin(pointBeside(view, pinned, -1));
    },
    Escape: () => {
      onPin(undefined);
    },
  };
  return acts[key];
}

/** The next corner of any piece, or the one before. */
function pointBeside(view: SkirtView, spot: Spot | undefined, way: 1 | -1): Spot | undefined {
  const all = allSpots(view).filter(({ point }) => point !== undefined);
  const at = all.findIndex(({ piece, point }) => piece === spot?.piece && point === spot.point);
  const next = at === -1 ? (way === 1 ? 0 : all.length - 1) : at + way;
  return all[(next + all.length) % all.length];
}

/** Brings a place to the middle, as near as the table is shown. */
function lookAt(view: SkirtView, spot: Spot, camera: Camera, layout: TableLayout): void {
  const p = view.pieces.findIndex(({ name }) => name === spot.piece);
  const piece = view.pieces[p];
  const zero = layout.zeros[p];
  const coordinates = piece?.sizes[view.sizes.indexOf(view.base)]?.coordinates;
  if (piece === undefined || zero === undefined || coordinates === undefined) return;
  const edge = piece.edges.find(({ seam }) => seam === spot.seam);
  const place = piece.points.findIndex(({ name }) => name === spot.point);
  const places = place >= 0 ? [place] : (edge?.at ?? piece.points.map((_, i) => i));
  const points = places.map((one) => pointAt(coordinates, one));
  const mean = (values: readonly number[]): number =>
    values.reduce((sum, value) => sum + value, 0) / Math.max(1, values.length);
  camera.to(zero.x + mean(points.map(({ x }) => x)), zero.y + mean(points.map(({ y }) => y)));
}
