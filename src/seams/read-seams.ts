/** Which edges are sewn together, as a file states it. */
import type { Place } from '../errors';
import { InputError } from '../errors';
import type { PiecePlan } from '../pattern/piece';
import type { LengthUnit } from '../units';
import type { Pattern } from '../pattern/pattern';
import type { SeamEdge, SeamPair, SeamSide } from '../pattern/seam-pair';
import { seamPair } from '../pattern/seam-pair';
import { statedBlanks } from '../table/blanks';
import { meantName, namesMeant } from '../table/name-match';
import { refuseCountingNotes } from '../table/note-cells';
import type { TypedCell } from '../table/typed-table';
import { agreedUnit } from '../table/statements';
import { lengthCell, readTypedTable } from '../table/typed-table';
import type { SeamRow } from './eased-stretches';
import { gatheredStretches, stretchEnds } from './eased-stretches';
import type { UnreadText } from '../table/unread';
import { unreadIn } from '../table/unread';
import type { StatedPair } from './stated-pair';

const NEEDED = ['edge', 'sewn_to'] as const;
const KNOWN = ['ease', 'from', 'to', 'way', 'note'] as const;

/**
 * Reads which edges are sewn together, a pair a row: `sleeve.cap`, `front.armhole + back.armhole`,
 * and the ease by which the first is meant to be longer; with `from` and `to` that of one stretch. A
 * seam of which only stretches are told has their sum. Throws InputError `edge-unknown`,
 * `point-unknown`, `cell-not-a-number` or `bad-option` with the place.
 */
export function readSeams(
  text: string,
  file: string,
  pattern: Pick<Pattern, 'pieces' | 'unit'>,
): { readonly pairs: readonly StatedPair[]; readonly unread: readonly UnreadText[] } {
  const table = readTypedTable<(typeof NEEDED)[number] | (typeof KNOWN)[number]>(
    text,
    file,
    NEEDED,
    KNOWN,
  );
  const unit: LengthUnit = agreedUnit(table, table.units.values()) ?? pattern.unit;
  refuseCountingNotes(table, unit);
  const { isBlank } = statedBlanks(table);
  const plans = pattern.pieces.map(({ base }) => base.plan);
  const rows = table.rows.map((row): SeamRow => {
    const ease = row('ease');
    const way = row('way');
    const sides = [typedSide(row('edge'), plans), typedSide(row('sewn_to'), plans)] as const;
    const pair = seamPair(`${row('edge').text} to ${row('sewn_to').text}`, sides, {
      way: isBlank(way) ? undefined : wayOf(way),
    });
    return {
      ...pair,
      ease: isBlank(ease) ? undefined : lengthCell(ease, unit),
      ends: stretchEnds(row('from'), row('to'), sides, plans),
      place: row('edge').place,
    };
  });
  return { pairs: gatheredStretches(rows), unread: unreadIn(table, ['blank']) };
}

/**
 * Edges such as `front.side`, `front side` or `front.armhole + back.armhole`, of which `reversed` behind
 * one says that it is walked against the order of its outline. Throws InputError `edge-unknown`.
 */
export function readSide({ text, place }: TypedCell, plans: readonly PiecePlan[]): SeamSide {
  const known = plans.flatMap(({ name, outline }) =>
    [...new Set(outline.map(({ seam }) => seam))].map((edge) => ({ piece: name, edge })),
  );
  const edges = text.split('+').map((part): SeamEdge => {
    const [, name = '', reversed] = /^(.*?)(\s+\(?reversed\)?)?$/iu.exec(part.trim()) ?? [];
    const [found, ...others] = edgesMeant(name, known);
    if (found !== undefined && others.length === 0)
      return reversed === undefined ? found : { ...found, back: true };
    const several = [found, ...others].flatMap((edge) =>
      edge === undefined ? [] : [nameOf(edge)],
    );
    const all = known.map(nameOf).join(', ');
    throw new InputError('edge-unknown', {
      what: several.length > 0 ? 'more than one edge can be meant' : 'the pattern has no such edge',
      allowed:
        several.length > 0
          ? several.join(', ')
          : `piece.edge, with + between edges that are sewn one after another: ${all}`,
      got: text,
      place,
    });
  });
  return { edges };
}

function nameOf({ piece, edge }: SeamEdge): string {
  return `${piece}.${edge}`;
}

/** Those whose piece and edge stand on the sides of a dot, or whose whole name is typed without one. */
function edgesMeant(text: string, known: readonly SeamEdge[]): readonly SeamEdge[] {
  const named = (typed: string, name: (edge: SeamEdge) => string, among: readonly SeamEdge[]) => {
    const meant = new Set(namesMeant(typed, among.map(name)));
    return among.filter((edge) => meant.has(name(edge)));
  };
  const dot = text.indexOf('.');
  const exact = known.filter((edge) => nameOf(edge) === text);
  if (exact.length > 0 || dot < 0) return exact.length > 0 ? exact : named(text, nameOf, known);
  const ofPiece = named(text.slice(0, dot).trim(), ({ piece }) => piece, known);
  return named(text.slice(dot + 1).trim(), ({ edge }) => edge, ofPiece);
}

/** A side as somebody types it; each name is that of one stretch. */
function typedSide(cell: TypedCell, plans: readonly PiecePlan[]): SeamSide {
  const side = readSide(cell, plans);
  for (const { piece, edge } of side.edges)
    refuseParted(
      plans.find(({ name }) => name === piece),
      edge,
      cell.place,
    );
  return side;
}

/** Edges of one name that do not touch would be walked as if they did. */
function refuseParted(plan: PiecePlan | undefined, edge: string, place: Place): void {
  const outline = plan?.outline ?? [];
  const starts = outline.filter(({ seam }, i) => seam === edge && outline.at(i - 1)?.seam !== edge);
  if (starts.length < 2) return;
  throw new InputError('edge-unknown', {
    what: `edges called ${edge} stand apart on ${plan?.name ?? ''}, so it is not clear which is sewn`,
    allowed: 'a name of its own for each stretch',
    got: `from ${starts.map(({ from }) => from).join(' and from ')}`,
    place,
  });
}

function wayOf(cell: TypedCell): SeamPair['way'] {
  return meantName(cell, ['same', 'opposite'] as const, {
    code: 'bad-option',
    what: 'it is not clear how the two edges run along each other',
    allowed: 'same, opposite, or blank',
  });
}
