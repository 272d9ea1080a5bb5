/** Which edges are sewn together: by an equal seam name on two pieces, or as a file states it. */
import { InputError } from '../errors';
import { parseLength } from '../table/number-cell';
import type { PiecePlan } from '../pattern/piece';
import type { LengthUnit } from '../units';
import type { GivenPattern, SeamPair, SeamSide } from '../given/pattern';
import type { RawPoint } from '../given/raw-point';
import type { TypedCell } from '../table/typed-table';
import { agreedUnit } from '../table/statements';
import { lengthCell, readTypedTable } from '../table/typed-table';

interface NamedPoints {
  readonly name: string;
  readonly points: readonly RawPoint[];
}

const PASSED: ReadonlySet<RawPoint['kind']> = new Set(['corner', 'curve', 'notch']);

/** Pairs the two edges that have one seam name; other numbers of edges pair nothing. */
export function pairsBySeam(
  pieces: readonly NamedPoints[],
): Pick<GivenPattern, 'seams' | 'unpaired'> {
  const edges = new Map<string, { piece: string; edge: string }[]>();
  for (const { name: piece, points } of pieces) {
    for (const { kind, seam, edge } of points) {
      if (seam === '' || !PASSED.has(kind)) continue;
      const found = edges.get(seam) ?? [];
      if (!found.some((other) => other.piece === piece && other.edge === edge)) {
        found.push({ piece, edge });
      }
      edges.set(seam, found);
    }
  }
  const seams: SeamPair[] = [];
  const unpaired: { name: string; edges: number }[] = [];
  for (const [name, [a, b, ...more]] of edges) {
    if (a !== undefined && b !== undefined && more.length === 0) {
      const sides = [{ edges: [a] }, { edges: [b] }] as const;
      seams.push({ name, sides, ease: 0, way: undefined });
    } else unpaired.push({ name, edges: more.length + (b === undefined ? 1 : 2) });
  }
  return { seams, unpaired };
}

const NEEDED = ['edge', 'sewn_to'] as const;
const KNOWN = ['ease', 'way', 'note'] as const;

/**
 * Reads which edges are sewn together, a pair a row: `sleeve.cap`, `front.armhole + back.armhole`,
 * and the ease by which the first is meant to be longer. Throws InputError `edge-unknown`,
 * `cell-not-a-number` or `bad-option` with the place.
 */
export function readSeams(
  text: string,
  file: string,
  pattern: Pick<GivenPattern, 'pieces' | 'unit'>,
): readonly SeamPair[] {
  const table = readTypedTable<(typeof NEEDED)[number] | (typeof KNOWN)[number]>(
    text,
    file,
    NEEDED,
    KNOWN,
  );
  const unit: LengthUnit = agreedUnit(table, table.units.values()) ?? pattern.unit;
  const plans = pattern.pieces.map(({ base }) => base.plan);
  return table.rows.map((row) => {
    const ease = row('ease');
    const way = row('way');
    if (ease.text !== '' && parseLength(ease.text, unit) === undefined) lengthCell(ease, unit);
    return {
      name: `${row('edge').text} to ${row('sewn_to').text}`,
      sides: [readSide(row('edge'), plans), readSide(row('sewn_to'), plans)],
      ease: ease.text === '' ? 0 : lengthCell(ease, unit),
      way: wayOf(way),
    };
  });
}

/** Edges such as `front.side` or `front.armhole + back.armhole`. Throws InputError `edge-unknown`. */
export function readSide({ text, place }: TypedCell, plans: readonly PiecePlan[]): SeamSide {
  const edges = text.split('+').map((part) => {
    const [piece = '', edge = ''] = part.split('.').map((name) => name.trim());
    return { piece, edge };
  });
  const known = plans.flatMap((plan) =>
    [...new Set(plan.outline.map(({ seam }) => seam))].map((seam) => `${plan.name}.${seam}`),
  );
  for (const { piece, edge } of edges) {
    if (known.includes(`${piece}.${edge}`)) continue;
    throw new InputError('edge-unknown', {
      what: 'the pattern has no such edge',
      allowed: `piece.edge, with + between edges that are sewn one after another: ${known.join(', ')}`,
      got: text,
      place,
    });
  }
  return { edges };
}

function wayOf({ text, place }: TypedCell): SeamPair['way'] {
  if (text === '') return undefined;
  if (text === 'same' || text === 'opposite') return text;
  throw new InputError('bad-option', {
    what: 'it is not clear how the two edges run along each other',
    allowed: 'same, opposite, or blank',
    got: text,
    place,
  });
}
