/** Stretches of a seam with an ease of their own, as a list of seams states them. */
import type { Place } from '../errors';
import { InputError } from '../errors';
import { namedPoint } from '../pattern/named-point';
import type { Piece, PiecePlan } from '../pattern/piece';
import type { EasedStretch, SeamPair } from '../pattern/seam-pair';
import type { TypedCell } from '../table/typed-table';
import { sewnEdges, wayOf } from './seam-way';
import type { StatedPair } from './stated-pair';
import { isTurned, sameSeam } from './stated-pair';
import { isBetween, walkPair } from './walk-pair';

/** A row of a list of seams; `ease` is undefined where its cell is blank. */
export interface SeamRow extends Omit<StatedPair, 'ease' | 'eased'> {
  readonly ease: number | undefined;
  readonly ends: Ends | undefined;
}

type Ends = Pick<EasedStretch, 'from' | 'to'>;

/**
 * The ends of a stretch, points of either side as `piece.point`; undefined where both cells are blank.
 * Throws InputError `sheet-malformed` where only one is given, `piece-unknown` and `point-unknown`.
 */
export function stretchEnds(
  from: TypedCell,
  to: TypedCell,
  sides: SeamPair['sides'],
  plans: readonly PiecePlan[],
): Ends | undefined {
  if (from.text === '' && to.text === '') return undefined;
  const sewn = new Set(sides.flatMap(({ edges }) => edges.map(({ piece }) => piece)));
  const known = plans.filter(({ name }) => sewn.has(name));
  const named = (cell: TypedCell): string => {
    const { piece, point } = namedPoint({ text: '', place: cell.place }, cell, known);
    return `${piece}.${point}`;
  };
  return { from: named(from), to: named(to) };
}

/**
 * The pairs of a list of seams: the rows of one seam's stretches gathered, its ease their sum unless a
 * row states that of the whole. Rows that state a whole seam twice stay two.
 */
export function gatheredStretches(rows: readonly SeamRow[]): readonly StatedPair[] {
  const parts = rows.filter(({ ends }) => ends !== undefined);
  const wholes = rows.filter(({ ends }) => ends === undefined);
  const alone = parts.filter(
    (part, i) => ![...wholes, ...parts.slice(0, i)].some((other) => sameSeam(part, other)),
  );
  return [...wholes, ...alone].map(({ ends: _, ...pair }): StatedPair => {
    const eased = parts.flatMap((part): EasedStretch | [] => {
      if (part.ends === undefined || !sameSeam(part, pair)) return [];
      const ease = part.ease ?? 0;
      return {
        ...part.ends,
        ease: isTurned(part, pair) && ease !== 0 ? -ease : ease,
        place: part.place,
      };
    });
    if (eased.length === 0) return { ...pair, ease: pair.ease ?? 0 };
    const sum = eased.reduce((total, own) => total + own.ease, 0);
    const whole = wholes.some((own) => own.place === pair.place) ? pair.ease : undefined;
    return { ...pair, ease: whole ?? sum, eased };
  });
}

/**
 * Throws InputError `point-unknown` for a stretch with an ease of its own that no two neighboring
 * places bound at which both sides of its seam meet in the base, and for one that is told twice.
 */
export function refuseUnmetStretches(base: readonly Piece[], seams: readonly SeamPair[]): void {
  const areSewn = sewnEdges(seams);
  for (const pair of seams) {
    if (pair.eased === undefined) continue;
    const { stretches } = walkPair(base, { ...pair, ease: 0 }, wayOf(base, pair, areSewn));
    const told = pair.eased.map((own) => stretches.findIndex(({ names }) => isBetween(own, names)));
    pair.eased.forEach((own, i) => {
      const isTwice = told[i] !== -1 && told.indexOf(told[i] ?? -1) !== i;
      if (told[i] !== -1 && !isTwice) return;
      refuse(
        own,
        own.place,
        isTwice,
        stretches.map(({ from, to }) => `${from} to ${to}`),
      );
    });
  }
}

function refuse({ from, to }: Ends, place: Place, isTwice: boolean, all: readonly string[]): never {
  throw new InputError('point-unknown', {
    what: isTwice
      ? 'the ease of this stretch is told twice'
      : 'this is no stretch between two neighboring places at which both sides meet',
    allowed: all.join(', '),
    got: `${from} to ${to}`,
    place,
  });
}
