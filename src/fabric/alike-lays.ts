/** Which lays look alike to whoever lays out the pieces: the same ones beside and below each other. */
import type { Box } from '../geometry/bounds';
import { pointBounds } from '../geometry/bounds';
import { SAME_PLACE } from '../tolerance';
import type { Lay, Placement } from './lay';

interface Boxed {
  readonly name: string;
  readonly box: Box;
}

/**
 * The same text for lays in which the same pieces lie the same way up on the same layers, and every
 * two of them in the same order beside or below each other.
 */
export function layKey(lay: Lay): string {
  const { cloth, placements } = lay;
  const boxed = placements
    .map((placed): Boxed => ({ name: nameOf(placed), box: pointBounds(placed.corners) }))
    .sort((a, b) =>
      a.name === b.name ? middle(a.box).x - middle(b.box).x : a.name < b.name ? -1 : 1,
    );
  const ways = boxed.map((a, i) =>
    boxed
      .slice(i + 1)
      .map((b) => wayTo(a.box, b.box))
      .join(''),
  );
  return [
    isFoldedAtAll(lay) ? cloth.fold : 'open',
    ...boxed.map(({ name }) => name),
    ...ways,
  ].join();
}

/** False of open cloth, and of folded cloth that must be opened out for all that lies on it. */
export function isFoldedAtAll({ cloth, folded }: Lay): boolean {
  return cloth.fold !== 'open' && folded > SAME_PLACE;
}

function nameOf({ piece, zone, turned, mirrored, layers }: Placement): string {
  const isFaceTold = mirrored && layers === 1;
  return [
    piece.piece.plan.name,
    zone === 'opened-end' ? 'open' : zone,
    turned ? 'turned' : '',
    isFaceTold ? 'face down' : '',
  ].join(' ');
}

function middle({ left, right, top, bottom }: Box): { readonly x: number; readonly y: number } {
  return { x: (left + right) / 2, y: (top + bottom) / 2 };
}

/** Where the second box lies from the first: right, left, below or above. */
function wayTo(a: Box, b: Box): 'r' | 'l' | 'b' | 'a' {
  const across =
    (Math.min(a.right, b.right) - Math.max(a.left, b.left)) /
    Math.min(a.right - a.left, b.right - b.left);
  const along =
    (Math.min(a.bottom, b.bottom) - Math.max(a.top, b.top)) /
    Math.min(a.bottom - a.top, b.bottom - b.top);
  if (along >= across) return middle(b).x > middle(a).x ? 'r' : 'l';
  return middle(b).y > middle(a).y ? 'b' : 'a';
}
