/** Squares to measure before anything else is printed, ready for words inside. */
import { point } from '../geometry/point';
import type { Shape } from '../render/scene';
import { rectangle } from '../render/scene';
import { INK } from '../render/size-style';
import { text } from '../render/type';
import { toMillimeters } from '../units';
import { paragraphs } from './paragraphs';
import type { Paragraph } from './paragraphs';

/** The lengths in mm with their names. */
export const TEST_SIDES = [
  { side: 100, length: '100 mm' },
  { side: toMillimeters(4, 'in'), length: '4 in' },
] as const;

const NAME = 4;
/** mm from the sides to the words inside. */
const INSET = 9;

/** The square with its corner at (0, 0): the middle of its line is `side` mm long. */
export function testSquare(
  { side, length }: (typeof TEST_SIDES)[number],
  words: readonly Paragraph[],
): readonly Shape[] {
  const bold = { weight: 'bold', anchor: 'middle' } as const;
  return [
    rectangle(
      'test-square',
      { left: 0, top: 0, right: side, bottom: side },
      { color: INK, width: 0.4 },
    ),
    text(length, point(side / 2, side - 3), NAME, bold),
    text(length, point(6, side / 2), NAME, { ...bold, rotation: -90 }),
    paragraphs(words, INSET, INSET - 2, side - 2 * INSET).group,
  ];
}
