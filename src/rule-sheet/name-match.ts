/** Names of pieces and points as people write them, found among those that the pattern has. */
import { InputError } from '../errors';
import type { PiecePlan } from '../pattern/piece';
import { labelKey } from '../table/label';
import type { TypedCell } from '../table/typed-table';
import { excerpt } from '../table/tidy-text';
import type { RuleCell } from './rule-sheet';

/**
 * The name that `text` is, or else the only one that has its letters and digits in their order,
 * whatever the case, blanks, hyphens and underscores; undefined if none or several have.
 */
export function matchName(text: string, names: readonly string[]): string | undefined {
  if (names.includes(text)) return text;
  const key = labelKey(text);
  const [found, ...others] = names.filter((name) => labelKey(name) === key);
  return others.length === 0 && key !== '' ? found : undefined;
}

/**
 * Piece and point from two cells, or from one as in `front.side_hip`. Throws InputError
 * `sheet-malformed` where one of them is not named, `piece-unknown` and `point-unknown`.
 */
export function namedPoint(
  piece: TypedCell,
  point: TypedCell,
  plans: readonly PiecePlan[],
): Pick<RuleCell, 'piece' | 'point'> {
  const dot = point.text.indexOf('.');
  const inOne = piece.text === '';
  const [first, second] = inOne
    ? [point.text.slice(0, Math.max(0, dot)).trim(), point.text.slice(dot + 1).trim()]
    : [piece.text, point.text];
  if (first === '' || second === '') {
    throw new InputError('sheet-malformed', {
      what: 'a row does not name its piece and point',
      allowed: 'names of the pattern, such as front and side_hip, or front.side_hip',
      got: excerpt(inOne ? point.text : `${first}, ${second}`),
      place: point.place,
    });
  }
  const pieces = plans.map(({ name }) => name);
  const plan = plans.find(({ name }) => name === matchName(first, pieces));
  if (plan === undefined) {
    throw new InputError('piece-unknown', {
      what: 'the pattern has no such piece',
      allowed: pieces.join(', '),
      got: excerpt(first),
      place: inOne ? point.place : piece.place,
    });
  }
  const name = plan.index.has(second) ? second : matchName(second, plan.pointNames);
  if (name !== undefined) return { piece: plan.name, point: name };
  throw new InputError('point-unknown', {
    what: `the piece ${plan.name} has no such point`,
    allowed: plan.pointNames.filter((known) => !known.includes('.')).join(', '),
    got: excerpt(second),
    place: point.place,
  });
}
