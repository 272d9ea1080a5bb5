/** Graded points of two runs beside each other. */
import { counted } from '../../table/counted';
import { SHOWN_ALIKE } from '../../tolerance';
import type { LengthUnit } from '../../units';
import { LENGTH_UNITS, fromMillimeters } from '../../units';
import type { Row } from './rows';
import { millimeters } from './rows';

/** Points that only shape a curve have no line of their own. */
export const HANDLE = '_handle';

interface Placed {
  readonly size: string;
  readonly piece: string;
  readonly point: string;
  readonly x: number;
  readonly y: number;
}

/** The unit of the columns. */
function unitOf(rows: readonly Row[]): LengthUnit {
  return LENGTH_UNITS.find((name) => rows[0]?.[`x_${name}`] !== undefined) ?? 'mm';
}

function placesOf(rows: readonly Row[]): readonly Placed[] {
  const unit = unitOf(rows);
  return rows
    .filter(({ point = '' }) => !point.endsWith(HANDLE))
    .map((row) => ({
      size: row.size ?? '',
      piece: row.piece ?? '',
      point: row.point ?? '',
      x: millimeters(row[`x_${unit}`], unit),
      y: millimeters(row[`y_${unit}`], unit),
    }));
}

/** A sentence for each piece whose corners moved, with the farthest; before them what came and went. */
export function pointChanges(before: readonly Row[], now: readonly Row[]): readonly string[] {
  const [old, places] = [placesOf(before), placesOf(now)];
  const key = ({ size, piece, point }: Placed): string => JSON.stringify([size, piece, point]);
  const known = new Map(old.map((place) => [key(place), place]));
  const pieces = [...new Set(places.map(({ piece }) => piece))];
  return [
    ...comings('Sizes', old, places, ({ size }) => size),
    ...comings('Pieces', old, places, ({ piece }) => piece),
    ...[...new Set(old.map(({ piece }) => piece))]
      .filter((piece) => pieces.includes(piece))
      .flatMap((own) => {
        const of = (all: readonly Placed[]) => all.filter(({ piece }) => piece === own);
        return comings(`${own}: points`, of(old), of(places), ({ point }) => point);
      }),
    ...pieces.flatMap((piece) => {
      const moved = places
        .filter((place) => place.piece === piece)
        .flatMap((place) => {
          const was = known.get(key(place));
          const by = was === undefined ? 0 : Math.hypot(place.x - was.x, place.y - was.y);
          return by < SHOWN_ALIKE ? [] : [{ ...place, by }];
        });
      if (moved.length === 0) return [];
      const { point, size, by } = moved.reduce((a, b) => (b.by > a.by ? b : a));
      const points = new Set(moved.map((place) => place.point)).size;
      const most = `${point} of ${size} by ${bothUnits(by, unitOf(now))}`;
      return [`${piece}: ${counted(points, 'point')} moved, most ${most}.`];
    }),
  ];
}

/** What came and what went, such as sizes. */
function comings<Item>(
  kind: string,
  before: readonly Item[],
  now: readonly Item[],
  nameOf: (item: Item) => string,
): readonly string[] {
  const [old, present] = [new Set(before.map(nameOf)), new Set(now.map(nameOf))];
  const added = [...present].filter((name) => !old.has(name));
  const gone = [...old].filter((name) => !present.has(name));
  return [
    ...(added.length > 0 ? [`${kind} added: ${added.join(', ')}.`] : []),
    ...(gone.length > 0 ? [`${kind} gone: ${gone.join(', ')}.`] : []),
  ];
}

/** `0.53 in (1.34 cm)` where the points stand in inches, else the other way round. */
function bothUnits(mm: number, first: LengthUnit): string {
  const [own, other] = first === 'in' ? (['in', 'cm'] as const) : (['cm', 'in'] as const);
  const shown = (unit: LengthUnit): string => `${fromMillimeters(mm, unit).toFixed(2)} ${unit}`;
  return `${shown(own)} (${shown(other)})`;
}
