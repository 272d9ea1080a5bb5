/** The pages of a booklet: its sections one below the other, a heading never alone at a foot. */
import { point } from '../../geometry/point';
import type { Scene, Shape } from '../../render/scene';
import { SOFT_INK } from '../../render/size-style';
import { heightOf } from '../../render/sketch';
import { fitted, text } from '../../render/type';
import type { Flowing } from '../flow';
import { flowed, leastHeight } from '../flow';
import type { SheetPaper } from '../paper';
import type { Booklet, BookletChoice } from './booklet';
import type { Section } from './sections';
import { headingBlock, sections } from './sections';

/** mm between two blocks, and above the heading of a section. */
const BETWEEN = 5;
const ABOVE_HEADING = 9;
/** Share of the gaps where pages are closely set. No tolerance: a look. */
const CLOSER = 0.6;
/** Type size in mm of the line at the foot, and the room that it takes. */
const FOOT = 2.4;
const FOOT_ROOM = 6;

/** Upright pages within the margins, the first with the cover at its head; none for the choice `none`. */
export function bookletPages(
  booklet: Booklet,
  choice: BookletChoice,
  paper: SheetPaper,
  margin: number,
): readonly Scene[] {
  const width = paper.width - 2 * margin;
  const room = {
    left: margin,
    top: margin,
    right: paper.width - margin,
    bottom: paper.height - margin - FOOT_ROOM,
  };
  const told = sections(booklet, choice, width);
  // Closer together where that saves a page, which a few lines would otherwise have for themselves.
  const pages = [1, CLOSER]
    .map((share) => flowed(flowing(told, share), room))
    .reduce((wide, close) => (close.length < wide.length ? close : wide));
  return pages.map((shapes, i) => ({
    title: booklet.title,
    width: paper.width,
    height: paper.height,
    shapes: [
      ...shapes,
      foot(`${booklet.title}, booklet ${i + 1} of ${pages.length}`, paper, margin),
    ],
  }));
}

/** The sections one after the other, the gaps between their blocks `share` times as wide as usual. */
function flowing(told: readonly Section[], share: number): readonly Flowing[] {
  return told.flatMap(({ heading, blocks: [first, ...others] }): readonly Flowing[] => {
    if (first === undefined) return [];
    const between = share * BETWEEN;
    const blocks = [first, ...others].map((block) => ({ block, above: between }));
    if (heading === undefined) return blocks;
    const block = headingBlock(heading);
    const needed = heightOf(block) + between + leastHeight(first);
    return [{ block, above: share * ABOVE_HEADING, needed }, ...blocks];
  });
}

function foot(words: string, { width, height }: SheetPaper, margin: number): Shape {
  return text(words, point(margin, height - margin), fitted(words, FOOT, width - 2 * margin), {
    color: SOFT_INK,
  });
}
