/** What is known of a point or a seam: its ladder of moves, its rule, its length in every size. */
import type { Pattern, SkirtView, Spot, SpotView } from '../wish';
import { UNIT_WORDS, showNumber } from '../../units';
import { useState } from 'preact/hooks';
import { Derived } from './derived';
import type { Engine } from './engine-client';
import { Table } from './table';
import { useTold } from './use-told';
import { otherDisplay, signed, spaced } from './words';

/** The list of all places, and what is told of the one looked at. */
export function SpotPanel({
  view,
  spot,
  pattern,
  engine,
  onPin,
}: {
  readonly view: SkirtView;
  readonly spot: Spot | undefined;
  readonly pattern: Pattern;
  readonly engine: Engine;
  readonly onPin: (spot: Spot | undefined) => void;
}) {
  const { told, wish } = useTold(
    engine,
    spot === undefined ? undefined : { kind: 'spot', pattern, spot },
  );
  const isOwn = spot !== undefined && JSON.stringify(wish?.spot) === JSON.stringify(spot);
  return (
    <div class="spot">
      <label class="choice">
        look at{' '}
        <select
          value={spot === undefined ? '' : keyOf(spot)}
          onChange={(event) => {
            onPin(allSpots(view).find((one) => keyOf(one) === event.currentTarget.value));
          }}
        >
          <option value="">a point or seam, or touch it in the nest</option>
          {view.pieces.map(({ name }) => (
            <optgroup label={spaced(name)}>
              {allSpots(view)
                .filter(({ piece }) => piece === name)
                .map((one) => (
                  <option value={keyOf(one)}>{spotWords(one)}</option>
                ))}
            </optgroup>
          ))}
        </select>
      </label>
      {isOwn && told !== undefined && <SpotTable view={view} told={told} spot={spot} />}
      {view.style !== undefined && spot?.point !== undefined && (
        <Steps {...{ engine, pattern }} point={`${spot.piece}.${spot.point}`} />
      )}
    </div>
  );
}

/** The derivation of the point looked at, once somebody wants it. */
function Steps(props: {
  readonly engine: Engine;
  readonly pattern: Pattern;
  readonly point: string;
}) {
  const [isOpen, setOpen] = useState(false);
  return (
    <details
      open={isOpen}
      onToggle={(event) => {
        setOpen(event.currentTarget.open);
      }}
    >
      <summary>Its rule step by step</summary>
      {isOpen && <Derived {...props} />}
    </details>
  );
}

function SpotTable({
  view,
  told,
  spot,
}: {
  readonly view: SkirtView;
  readonly told: SpotView;
  readonly spot: Spot;
}) {
  const { sizes, display, base } = view;
  const other = otherDisplay(display);
  if (told.kind === 'piece') return <p>{spaced(spot.piece)}</p>;
  if (told.kind === 'seam')
    return (
      <Table
        caption={`Length of ${spaced(spot.seam ?? '')}, ${spaced(spot.piece)}`}
        heads={['size', ...sizes]}
        rows={[display, other].map((one) => [
          one.unit,
          ...told.lengths.map((length) => showNumber(length, one)),
        ])}
      />
    );
  const axis = (moves: typeof told.moves, i: 0 | 1): string[] =>
    moves.map((move) => signed(move[i], display));
  return (
    <>
      <Table
        caption={`Moves of ${spaced(spot.point ?? '')}, ${spaced(spot.piece)}, from ${base}, in ${UNIT_WORDS[display.unit]}`}
        heads={['size', ...sizes]}
        rows={[
          ['across', ...axis(told.moves, 0)],
          ['down', ...axis(told.moves, 1)],
          ['step across', ...axis(told.steps, 0)],
          ['step down', ...axis(told.steps, 1)],
        ]}
      />
      <dl class="rule">
        <dt>across</dt>
        <dd>{told.rule.x || '0'}</dd>
        <dt>down</dt>
        <dd>{told.rule.y || '0'}</dd>
      </dl>
    </>
  );
}

/** The corners and seams of every piece. */
export function allSpots({ pieces }: SkirtView): readonly Spot[] {
  return pieces.flatMap((piece) => [
    ...piece.points.flatMap(({ name, handle }) =>
      handle ? [] : [{ piece: piece.name, point: name }],
    ),
    ...[...new Set(piece.edges.map(({ seam }) => seam))].map((seam) => ({
      piece: piece.name,
      seam,
    })),
  ]);
}

function keyOf({ piece, point = '', seam = '' }: Spot): string {
  return JSON.stringify([piece, point, seam]);
}

function spotWords({ point, seam }: Spot): string {
  return point === undefined ? `seam ${spaced(seam ?? '')}` : spaced(point);
}
