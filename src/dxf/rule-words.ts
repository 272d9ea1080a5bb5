/** Which point of a block the number of a rule belongs to. */
import { SAME } from './block-places';
import type { BlockPoint } from './block-point';
import { placeIndex } from './place-index';
import type { DxfEntity } from './entity';

/** Words that give a rule. */
export const RULE_WORDS = /^#\s*(\d+)$/u;

/** A rule by its number, and the row of the words. */
export interface RuleNumber {
  readonly rule: number;
  readonly row: number;
}

/**
 * The rules of points by their names, and the words that belong to no point or contradict others.
 * Where lines share a place each takes the first words after it that no line before has taken; words
 * that are there only once count for all of them.
 */
export function matchedRules(
  points: readonly BlockPoint[],
  entities: readonly DxfEntity[],
): { readonly numbers: ReadonlyMap<string, RuleNumber>; readonly lost: readonly DxfEntity[] } {
  const numbers = new Map<string, RuleNumber>();
  const lost: DxfEntity[] = [];
  const words = entities
    .filter(({ type, words: text }) => type === 'TEXT' && RULE_WORDS.test(text))
    .toSorted((a, b) => a.row - b.row);
  const pointsAt = placeIndex(points, ({ raw }) => raw.at, SAME);
  const wordsAt = placeIndex(words, ({ points: [at] }) => at, SAME);
  for (const word of words) {
    const [at] = word.points;
    const number = { rule: Number(word.words.slice(1)), row: word.row };
    const here = at === undefined ? [] : pointsAt(at).filter((own) => isFor(word, own));
    const free = here.filter(({ raw }) => !numbers.has(raw.name));
    const own = free.find(({ row }) => row < word.row) ?? free[0];
    if (own !== undefined) numbers.set(own.raw.name, number);
    else if (!here.some(({ raw }) => numbers.get(raw.name)?.rule === number.rule)) lost.push(word);
  }
  for (const own of points) {
    if (numbers.has(own.raw.name)) continue;
    const here = wordsAt(own.raw.at).filter((word) => isFor(word, own));
    const word = here.find(({ row }) => row > own.row) ?? here[0];
    if (word === undefined) continue;
    numbers.set(own.raw.name, { rule: Number(word.words.slice(1)), row: word.row });
  }
  return { numbers, lost };
}

function isFor({ layer }: DxfEntity, { layers }: BlockPoint): boolean {
  return layers.includes(layer);
}
