/** Blocks with the same rules that grow from one to the next, as the sizes of a nest do. */
import { grouped } from '../lists/grouped';
import { InputError } from '../errors';
import { pointBounds } from '../geometry/bounds';
import type { Point } from '../geometry/point';
import { add, dot, length, point, quarterTurn, scale, subtract, unit } from '../geometry/point';
import type { ReadingNote } from '../pattern/pattern';
import { BLOCK_LARGER, BLOCK_STEPS_ALIKE, BLOCK_STEP_MOST, GROWS_ALONG } from '../tolerance';
import { D6673_LAYERS } from './d6673-layers';
import type { PlacedBlock } from './placed-blocks';
import type { RuleTable } from './rule-table';
import { RULE_WORDS } from './rule-words';
import type { Labeled } from './named-size';
import { labeled } from './named-size';

type Table = Pick<RuleTable, 'sizes' | 'sample' | 'rules'>;

/**
 * Pieces such as `FRONT_36` and `FRONT_38` may be sizes that the rule table does not have. They are
 * taken for that if they have the same rules in the same order, and each is larger than the one
 * before both ways, or larger the way that the rules go. So are three and more pieces whose names
 * differ in a letter or two, if they grow by like steps the same way. Throws InputError
 * `dxf-malformed`.
 */
export function refuseGrowing(
  shown: readonly Labeled[],
  { sample, rules }: Table,
  file: string,
): void {
  const parted = shown.filter(({ said, isParted }) => said === undefined && isParted);
  const families = familiesBy(
    parted,
    ({ stem, block }) => `${stem.toUpperCase()}\n${rulesOf(block)}`,
  );
  for (const family of families) {
    const like = family.filter(({ isLikeSize }) => isLikeSize);
    refuse(...(growsBothWays(family) ? [family] : []), ...chainsOf(like, rules));
  }
  const unsaid = shown.filter(({ said }) => said === undefined);
  for (const family of familiesBy(unsaid, ({ block }) => rulesOf(block)))
    refuse(...evenChainsOf(family));

  function refuse(...[nest]: readonly (readonly Labeled[])[]): void {
    const [first, second] = nest ?? [];
    if (nest === undefined || first === undefined || second === undefined) return;
    const named = first.stem === second.stem ? first.stem : 'one piece';
    throw new InputError('dxf-malformed', {
      what: `blocks with the same rules, each larger than the other, look like sizes of ${named}`,
      allowed: `one block for each piece, in the sample size ${sample}, or SIZE: ${sample} in each`,
      got: nest.map(({ piece, block }) => (named === 'one piece' ? piece : block.name)).join(', '),
      place: { file, row: second.block.row },
    });
  }
}

/** As many blocks are a nest under any names; fewer may be a front and a back with the same rules. */
const ANY_NAMES = 3;
/** Characters of a name that says nothing but which of several it is. */
const BARE_NAME = 2;

/**
 * Warns of blocks that are not refused and yet grow one after the other as their rules go, unless
 * each says that it is in the sample size.
 */
export function growingNotes(
  blocks: readonly PlacedBlock[],
  { sizes, sample, rules }: Table,
): readonly ReadingNote[] {
  const shown = blocks.map((block) => labeled(block, sizes));
  const unsaid = shown.filter(({ said }) => said === undefined);
  return familiesBy(unsaid, ({ block }) => rulesOf(block))
    .flatMap((family) => chainsOf(family, rules))
    .filter(
      (chain) =>
        chain.length >= ANY_NAMES ||
        chain.every(({ piece, isLikeSize }) => isLikeSize || piece.length <= BARE_NAME),
    )
    .map((chain) => ({
      severity: 'warning',
      check: 'nest',
      piece: '',
      what:
        `${chain.map(({ piece }) => piece).join(', ')} have the same rules and grow from one to the ` +
        'next as these rules go; if they are sizes of one piece they are graded already, and only ' +
        `the one in the sample size ${sample} is to be read`,
    }));
}

/** Those of which there are two and more with rules. */
function familiesBy(
  shown: readonly Labeled[],
  key: (own: Labeled) => string,
): readonly (readonly Labeled[])[] {
  const ruled = shown.filter(({ block }) => rulesOf(block) !== '');
  return [...grouped(ruled, key).values()].filter(({ length }) => length > 1);
}

/** Whether in their order each is both wider and higher than the one before, or each less. */
function growsBothWays(family: readonly Labeled[]): boolean {
  const boxes = family.map(({ block }) => boxOf(block));
  const grows = (from: Box, to: Box): boolean => from.every((side, i) => side < (to[i] ?? 0));
  const pairs = boxes.slice(1).map((to, i) => [boxes[i] ?? to, to] as const);
  return (
    pairs.every(([from, to]) => grows(from, to)) || pairs.every(([from, to]) => grows(to, from))
  );
}

/** Blocks in the order of their size, each of which the rules could have made of the one before. */
function chainsOf(
  family: readonly Labeled[],
  rules: RuleTable['rules'],
): readonly (readonly Labeled[])[] {
  const chains: Labeled[][] = [];
  for (const own of bySize(family)) {
    const chain = chains.find((found) => {
      const last = found.at(-1);
      return last !== undefined && goesAlong(last.block, own.block, rules);
    });
    if (chain === undefined) chains.push([own]);
    else chain.push(own);
  }
  return chains.filter(({ length }) => length > 1);
}

/** Characters in which the names of sizes differ at most, as `front38` and `front40` do. */
const NAMES_ALIKE = 2;

/**
 * Three and more blocks of like names that grow from one to the next by small steps in one direction
 * each, whatever the rules say: fronts, backs and linings of one pattern differ by unlike steps.
 */
function evenChainsOf(family: readonly Labeled[]): readonly (readonly Labeled[])[] {
  const chains: Labeled[][] = [];
  for (const own of bySize(family)) {
    const chain = chains.find((found) => {
      const [before, last] = [found.at(-2), found.at(-1)];
      if (last === undefined || !areNamedAlike(last.piece, own.piece)) return false;
      const step = changeOf(last.block, own.block);
      const [far, side] = [Math.max(...step.map(length)), Math.max(...boxOf(own.block))];
      if (!isLarger(last.block, own.block) || far > BLOCK_STEP_MOST * side) return false;
      if (before === undefined) return true;
      const earlier = changeOf(before.block, last.block);
      const [a, b] = [product(earlier, earlier), product(step, step)];
      if (Math.max(a, b) > BLOCK_STEPS_ALIKE ** 2 * Math.min(a, b)) return false;
      return product(step, earlier) > GROWS_ALONG * Math.sqrt(a * b);
    });
    if (chain === undefined) chains.push([own]);
    else chain.push(own);
  }
  return chains.filter((chain) => chain.length >= ANY_NAMES);
}

/** Whether two names are the same but for a letter or two in one place. */
function areNamedAlike(a: string, b: string): boolean {
  const [short, long] = a.length < b.length ? [a, b] : [b, a];
  let start = 0;
  while (start < short.length && short[start] === long[start]) start++;
  let end = 0;
  while (end < short.length - start && short.at(-1 - end) === long.at(-1 - end)) end++;
  return long.length - start - end <= NAMES_ALIKE;
}

function bySize(family: readonly Labeled[]): readonly Labeled[] {
  const sizeOf = ({ block }: Labeled): number => boxOf(block).reduce((sum, side) => sum + side, 0);
  return family.toSorted((a, b) => sizeOf(a) - sizeOf(b));
}

/** Whether one block is larger than another in one way at least and smaller in none. */
function isLarger(small: PlacedBlock, large: PlacedBlock): boolean {
  const [from, to] = [boxOf(small), boxOf(large)];
  const more = from.map((side, i) => ((to[i] ?? 0) - side) / Math.max(side, to[i] ?? 0));
  return more.some((share) => share > BLOCK_LARGER) && !more.some((share) => share < -BLOCK_LARGER);
}

/** What two blocks with the same rules differ by at their ruled points, wherever they lie. */
function changeOf(small: PlacedBlock, large: PlacedBlock): readonly Point[] {
  const there = ruledPlaces(large);
  return centered(ruledPlaces(small).map(({ at }, i) => subtract(there[i]?.at ?? at, at)));
}

/** Whether one block is larger than another as rules go. */
function goesAlong(small: PlacedBlock, large: PlacedBlock, rules: RuleTable['rules']): boolean {
  if (!isLarger(small, large)) return false;
  const change = changeOf(small, large);
  const moves = ruledPlaces(small).map(({ rule }) => rules.get(rule) ?? []);
  const axis = ruleAxis(small);
  return (moves[0] ?? []).slice(1).some((_, k) => {
    const step = centered(
      moves.map((own) => {
        const move = subtract(own[k + 1] ?? point(0, 0), own[k] ?? point(0, 0));
        const y = small.mirrored ? -move.y : move.y;
        return add(scale(axis, move.x), scale(quarterTurn(axis), y));
      }),
    );
    return (
      product(change, step) > GROWS_ALONG * Math.sqrt(product(change, change) * product(step, step))
    );
  });
}

/** The direction in which the rules of a block count x. */
function ruleAxis({ entities, turned }: PlacedBlock): Point {
  const drawn = entities.find(
    ({ layer, points }) => layer === D6673_LAYERS.gradeReference && points.length === 2,
  );
  const [from, to] = (drawn ?? turned)?.points ?? [];
  return from === undefined || to === undefined ? point(1, 0) : unit(subtract(to, from));
}

/** Vectors without what they have in common, so that it does not matter where a block lies. */
function centered(all: readonly Point[]): readonly Point[] {
  const mean = scale(all.reduce(add, point(0, 0)), 1 / Math.max(1, all.length));
  return all.map((own) => subtract(own, mean));
}

function product(a: readonly Point[], b: readonly Point[]): number {
  return a.reduce((sum, own, i) => sum + dot(own, b[i] ?? point(0, 0)), 0);
}

/** The rules of a block in their order, and where they stand. */
function ruledPlaces({ entities }: PlacedBlock): readonly { rule: number; at: Point }[] {
  return entities.flatMap(({ type, words, points: [at] }) => {
    const number = type === 'TEXT' ? RULE_WORDS.exec(words)?.[1] : undefined;
    return number === undefined || at === undefined ? [] : [{ rule: Number(number), at }];
  });
}

function rulesOf(block: PlacedBlock): string {
  return ruledPlaces(block)
    .map(({ rule }) => rule)
    .join(' ');
}

/** Width and height. */
type Box = readonly [number, number];

function boxOf({ entities }: PlacedBlock): Box {
  const { left, right, top, bottom } = pointBounds(entities.flatMap(({ points }) => points));
  return [right - left, bottom - top];
}
