/** The nest as a drawing: every size shown, the place looked at, and what lies over what. */
import { useMemo, useRef } from 'preact/hooks';
import type { TableLayout } from '../outline';
import {
  coordinatesBetween,
  edgePath,
  foldMirror,
  marksPath,
  netPath,
  pointAt,
  tableLayout,
} from '../outline';
import type { Looks } from '../state';
import type { PieceView, SkirtView, Spot } from '../wish';
import type { Camera } from './camera';
import { useCamera, usePointers } from './camera';
import { PairOfSizes } from './pair-of-sizes';
import { sizeLook } from './size-look';
import { useFrame } from './use-frame';
import { spaced } from './words';

/** What the nest is drawn from. */
export interface NestProps {
  readonly view: SkirtView;
  readonly looks: Looks;
  readonly spot: Spot | undefined;
  /** The label of a size that stands out. */
  readonly raised: string | undefined;
  readonly onHover: (spot: Spot | undefined) => void;
  readonly onPin: (spot: Spot | undefined) => void;
  /** Gets the camera as soon as there is one. */
  readonly onCamera: (camera: Camera, layout: TableLayout) => void;
  readonly onKey: (event: KeyboardEvent) => void;
}

/** The drawing, as large as its frame. */
export function Nest({ view, looks, spot, raised, ...on }: NestProps) {
  const frame = useRef<HTMLDivElement>(null);
  const drawing = useRef<SVGSVGElement>(null);
  const table = useRef<SVGGElement>(null);
  const { width, height } = useFrame(frame);
  const aspect = height === 0 ? 1 : width / height;
  const layout = useMemo(
    () => tableLayout(view.pieces, looks.unfolded, aspect),
    [view.pieces, looks.unfolded, aspect],
  );
  const camera = useCamera(table, layout, width, height);
  on.onCamera(camera, layout);
  usePointers(drawing, camera, (target) => {
    on.onPin(spotAt(target));
  });
  const drawn = useMemo(
    () => view.pieces.map((piece) => <Lines piece={piece} view={view} looks={looks} />),
    [view, looks],
  );
  return (
    <div class="frame" ref={frame}>
      <svg
        ref={drawing}
        class={`nest${raised === undefined ? '' : ' dimmed'}`}
        width={width}
        height={height}
        tabindex={0}
        role="group"
        aria-label={`Nest of ${view.title}: ${view.pieces.map(({ name }) => spaced(name)).join(', ')} in ${view.sizes.length} sizes. Arrow keys move it, plus and minus bring it nearer and farther, 0 shows all, brackets go from point to point. All its numbers stand in the tables below it.`}
        onKeyDown={on.onKey}
        onPointerOver={(event) => {
          on.onHover(event.target instanceof Element ? spotAt(event.target) : undefined);
        }}
        onPointerLeave={() => {
          on.onHover(undefined);
        }}
      >
        <g ref={table}>
          {view.pieces.map((piece, p) => {
            const { x, y } = layout.zeros[p] ?? { x: 0, y: 0 };
            return (
              <g transform={`translate(${x} ${y})`} data-piece-drawn={piece.name}>
                {drawn[p]}
                {raised !== undefined && <Raised piece={piece} view={view} size={raised} />}
                <Spots piece={piece} view={view} spot={spot} />
              </g>
            );
          })}
        </g>
      </svg>
    </div>
  );
}

/** The place that an element of the drawing stands for. */
function spotAt(element: Element): Spot | undefined {
  const { piece, point, seam } = (element as SVGElement).dataset;
  if (piece === undefined) return undefined;
  return {
    piece,
    ...(point === undefined ? {} : { point }),
    ...(seam === undefined ? {} : { seam }),
  };
}

/** A piece, the skirt that it is of, and how it is looked at. */
interface Drawn {
  readonly piece: PieceView;
  readonly view: SkirtView;
  readonly looks: Looks;
}

/** The lines of every size that is shown, the base on top. */
function Lines({ piece, view, looks }: Drawn) {
  const { sizes, base } = view;
  const baseRank = sizes.indexOf(base);
  const { between, pair, hidden } = looks;
  if (pair !== undefined) return <PairOfSizes piece={piece} view={view} pair={pair} />;
  const shown = sizes.flatMap((size, i) => (hidden.includes(size) || i === baseRank ? [] : [i]));
  const ranks = between !== undefined ? [] : shown;
  const isBaseShown = !hidden.includes(base) || between !== undefined;
  return (
    <>
      {ranks.map((rank) => (
        <SizeLines piece={piece} view={view} rank={rank} looks={looks} />
      ))}
      {isBaseShown && (
        <g class={between === undefined ? '' : 'ghost'}>
          <SizeLines piece={piece} view={view} rank={baseRank} looks={looks} />
        </g>
      )}
      {between !== undefined && (
        <Folded piece={piece} coordinates={coordinatesBetween(piece.sizes, between)} looks={looks}>
          <path
            class="net alone between"
            d={netPath(piece, coordinatesBetween(piece.sizes, between))}
          />
        </Folded>
      )}
    </>
  );
}

/** What is drawn of one size, and beside it its other half where pieces are folded out. */
function SizeLines({ piece, view, rank, looks }: Drawn & { readonly rank: number }) {
  const size = piece.sizes[rank];
  const label = view.sizes[rank] ?? '';
  if (size === undefined) return null;
  const isBase = label === view.base;
  const hasCut = looks.cut && size.cut !== undefined;
  const { className, dash } = sizeLook(rank, isBase);
  return (
    <Folded piece={piece} coordinates={size.coordinates} looks={looks}>
      <g class={className} data-size={label}>
        {looks.net && (
          <path
            class={hasCut ? 'net' : 'net alone'}
            data-line="net"
            d={netPath(piece, size.coordinates)}
            stroke-dasharray={hasCut ? undefined : dash}
          />
        )}
        {hasCut && (
          <>
            <path class="cut" data-line="cut" d={size.cut} stroke-dasharray={dash} />
            <path class="notch" d={size.notches} />
          </>
        )}
        {isBase && <path class="mark" d={marksPath(piece, size.coordinates)} />}
        {isBase && size.grain !== undefined && <path class="grain" d={size.grain} />}
      </g>
    </Folded>
  );
}

function Folded({
  piece,
  coordinates,
  looks,
  children,
}: Omit<Drawn, 'view'> & {
  readonly coordinates: readonly number[];
  readonly children: preact.ComponentChildren;
}) {
  const mirror = looks.unfolded ? foldMirror(piece, coordinates) : undefined;
  return (
    <>
      {mirror !== undefined && (
        <g class="other-half" transform={`matrix(${mirror.join(' ')})`}>
          {children}
        </g>
      )}
      {children}
    </>
  );
}

/** One size drawn once more, so that it stands out of the others. */
function Raised({ piece, view, size }: Omit<Drawn, 'looks'> & { readonly size: string }) {
  const rank = view.sizes.indexOf(size);
  const own = piece.sizes[rank];
  if (own === undefined) return null;
  const { className } = sizeLook(rank, size === view.base);
  return (
    <g class={`${className} raised`}>
      <path class="net alone" d={netPath(piece, own.coordinates)} />
    </g>
  );
}

/** What can be pointed at: the edges and corners of the base, and the place looked at with its ladder. */
function Spots({ piece, view, spot }: Omit<Drawn, 'looks'> & { readonly spot: Spot | undefined }) {
  const base = piece.sizes[view.sizes.indexOf(view.base)]?.coordinates ?? [];
  const own = spot?.piece === piece.name ? spot : undefined;
  const place = piece.points.findIndex(({ name }) => name === own?.point);
  return (
    <g class="spots">
      {own?.seam !== undefined &&
        piece.edges
          .filter(({ seam }) => seam === own.seam)
          .map((edge) => <path class="lit" d={edgePath(edge, base)} />)}
      {place >= 0 && <path class="ladder" d={ladderPath(piece, place)} />}
      {piece.edges.map((edge) => (
        <path
          class="reach"
          data-piece={piece.name}
          data-seam={edge.seam}
          d={edgePath(edge, base)}
        />
      ))}
      {piece.points.map(({ name, handle }, i) => {
        if (handle) return null;
        const { x, y } = pointAt(base, i);
        return (
          <path
            class={`dot${i === place ? ' lit-dot' : ''}`}
            data-piece={piece.name}
            data-point={name}
            d={`M${x} ${y}h0.01`}
          />
        );
      })}
      <text class="name" {...namePlace(piece, base)} data-piece={piece.name}>
        {spaced(piece.name)}
      </text>
    </g>
  );
}

/** Through the place of a point in every size. */
function ladderPath({ sizes }: PieceView, place: number): string {
  return sizes
    .map(({ coordinates }, i) => {
      const { x, y } = pointAt(coordinates, place);
      return `${i === 0 ? 'M' : 'L'}${x} ${y}`;
    })
    .join('');
}

/** In the middle of the base. */
function namePlace({ points }: PieceView, base: readonly number[]): { x: number; y: number } {
  const places = points.map((_, i) => pointAt(base, i));
  const middle = (values: readonly number[]): number =>
    (Math.min(...values) + Math.max(...values)) / 2;
  return { x: middle(places.map(({ x }) => x)), y: middle(places.map(({ y }) => y)) };
}
