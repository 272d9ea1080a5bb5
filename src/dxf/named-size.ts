/** What the name of a block or its words say of the size that it shows. */
import { pieceTitle, wordsAfter } from './block-words';
import type { PlacedBlock } from './placed-blocks';
import { sizeWord } from './rule-table';

/** A block, and its name taken apart. */
export interface Labeled {
  readonly block: PlacedBlock;
  readonly piece: string;
  /** The name without its size, such as `FRONT` of `FRONT_10`, `FRONT10` and `10-FRONT`. */
  readonly stem: string;
  /** The size in words. */
  readonly said: string | undefined;
  /** What the name ends or begins with, if it is a size of the rule table. */
  readonly ending: string | undefined;
  /** Whether it has a size or anything else after a stem. */
  readonly isParted: boolean;
  /** Whether that is a number or letters that stand for sizes, whatever the rule table has. */
  readonly isLikeSize: boolean;
}

/** The name of a block taken apart, given the sizes of the rule table. */
export function labeled(block: PlacedBlock, sizes: readonly string[]): Labeled {
  const piece = pieceTitle(block);
  const said = wordsAfter(block.entities, 'SIZE');
  const [title, name] = [parted(piece, sizes), parted(block.name, sizes)];
  const own = title !== undefined && isIn(sizes, title.ending) ? title : undefined;
  const ending =
    own?.ending ?? (name !== undefined && isIn(sizes, name.ending) ? name.ending : undefined);
  return {
    block,
    piece,
    stem: own?.stem ?? (title === undefined || ending !== undefined ? piece : title.stem),
    said,
    ending,
    isParted: title !== undefined,
    isLikeSize: title !== undefined && LIKE_SIZE.test(title.ending),
  };
}

/** Whether a label is one of some sizes, in whichever case. */
export function isIn(sizes: readonly string[], label: string): boolean {
  return sizes.some((size) => sizeWord(size).toUpperCase() === sizeWord(label).toUpperCase());
}

/** Numbers, and small, medium, large with as many X as anybody wants. */
const LIKE_SIZE = /^(\d{1,3}|(\d?X+)?[SL]|M)$/iu;

interface Parted {
  readonly stem: string;
  readonly ending: string;
}

const AFTER = /^(?<stem>.+?)[\s_.-]+(?<ending>[^\s_.-]+)$/u;
const BEFORE = /^(?<ending>[^\s_.-]+)[\s_.-]+(?<stem>.+)$/u;
const NUMBER_AFTER = /^(?<stem>.*\p{L})(?<ending>\d+)$/u;
const NUMBER_BEFORE = /^(?<ending>\d+)(?<stem>\p{L}.*)$/u;

/** A name as stem and size; where nothing of it is like a size, whatever stands after the stem. */
function parted(name: string, sizes: readonly string[]): Parted | undefined {
  const ways = [AFTER, NUMBER_AFTER, BEFORE, NUMBER_BEFORE].flatMap((way): Parted[] => {
    const { stem, ending } = way.exec(name)?.groups ?? {};
    return stem === undefined || ending === undefined ? [] : [{ stem, ending }];
  });
  return (
    ways.find(({ ending }) => isIn(sizes, ending)) ??
    ways.find(({ ending }) => LIKE_SIZE.test(ending)) ??
    (AFTER.test(name) ? ways[0] : undefined)
  );
}
