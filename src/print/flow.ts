/** Blocks below each other on pages, and pictures wherever a page has room for them. */
import type { Box } from '../geometry/bounds';
import { grownBox } from '../geometry/bounds';
import { point } from '../geometry/point';
import type { Shape } from '../render/scene';
import { freePlace } from '../render/side-by-side';
import type { Sketch } from '../render/sketch';
import { heightOf, placedAt, widthOf } from '../render/sketch';

/** What is not torn apart between pages, or pictures that may part from each other. */
export type Block = Sketch | readonly Sketch[];

/** A block on its way to a page. */
export interface Flowing {
  readonly block: Block;
  /** mm between it and what stands above it on its page. */
  readonly above: number;
  /** mm that have to be left on the page; its own height if absent. */
  readonly needed?: number;
}

/** mm between two pictures. */
const BETWEEN = 6;

/** The shapes of each page, in the `room` that every page has for them. */
export function flowed(all: readonly Flowing[], room: Box): readonly (readonly Shape[])[] {
  const pages: Shape[][] = [];
  let y = Infinity;
  const begin = (above: number, needed: number): Shape[] => {
    const page = pages.at(-1);
    if (page !== undefined && y + above + needed <= room.bottom) {
      y += above;
      return page;
    }
    const next: Shape[] = [];
    pages.push(next);
    y = room.top;
    return next;
  };
  for (const { block, above, needed = leastHeight(block) } of all) {
    if (!isPictures(block)) {
      begin(above, needed).push(placedAt(block, point(room.left, y)));
      y += heightOf(block);
      continue;
    }
    for (let left = block; left.length > 0;) {
      const page = begin(above, leastHeight(left));
      const { placed, later, bottom } = sideBySide(left, { ...room, top: y });
      page.push(...placed);
      y = bottom;
      left = later;
    }
  }
  return pages;
}

/** mm without which no page can take any of a block. */
export function leastHeight(block: Block): number {
  return isPictures(block) ? Math.min(...block.map(heightOf)) : heightOf(block);
}

function isPictures(block: Block): block is readonly Sketch[] {
  return Array.isArray(block);
}

/**
 * Pictures in their order, each as high up as it finds room; those that find none come `later`. One that is larger
 * than a page is laid alone.
 */
function sideBySide(
  pictures: readonly Sketch[],
  { left, top, right, bottom }: Box,
): {
  readonly placed: readonly Shape[];
  readonly later: readonly Sketch[];
  readonly bottom: number;
} {
  const taken: Box[] = [];
  const placed: Shape[] = [];
  const later: Sketch[] = [];
  let reached = top;
  const put = (picture: Sketch, place: Box): void => {
    taken.push(grownBox(place, BETWEEN));
    placed.push(placedAt(picture, point(left + place.left, top + place.top)));
    reached = Math.max(reached, top + place.bottom);
  };
  for (const picture of pictures) {
    const place = freePlace(picture, taken, right - left);
    if (place === undefined || top + place.bottom > bottom) later.push(picture);
    else put(picture, place);
  }
  if (placed.length === 0) {
    for (const picture of later.splice(0, 1)) {
      put(picture, { left: 0, top: 0, right: widthOf(picture), bottom: heightOf(picture) });
    }
  }
  return { placed, later, bottom: reached };
}
