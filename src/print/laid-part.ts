/** A part laid on a grid of tiles that begins at (0, 0), and the tiles that it prints on. */
import type { Box } from '../geometry/bounds';
import type { Point } from '../geometry/point';
import { SPREAD } from './ink';
import type { InkMap } from './ink-map';
import { inkMap } from './ink-map';
import type { PlanePart } from './plane';
import type { Reach } from './ink-reach';
import { reachOf } from './ink-reach';

/** The part of the plane that one sheet prints, in mm. */
export interface TileSize {
  readonly width: number;
  readonly height: number;
}

/** A part with the map of its ink. */
export interface MappedPart {
  readonly part: PlanePart;
  readonly ink: InkMap;
  /** So that it may lie closer to others than boxes do. */
  readonly reach: Reach;
  readonly width: number;
  readonly height: number;
}

/** Takes stock of the ink of a part once, however often it is then tried on the grid. */
export function mappedPart(part: PlanePart): MappedPart {
  const { ink } = part;
  const { left, top, right, bottom } = part.box;
  const clear = ink.box.left - left + SPREAD;
  const reach = reachOf(ink, part.box, clear);
  return { part, ink: inkMap(ink), reach, width: right - left, height: bottom - top };
}

/** A part at its place on the plane, in mm. */
export interface Laid {
  readonly mapped: MappedPart;
  readonly box: Box;
  /** A number for each tile: see `tileNumber`. */
  readonly tiles: readonly number[];
  /** How many of what is to stay whole a join of tiles cuts. */
  readonly cuts: number;
}

/** More columns than any plane has. */
const COLUMNS = 4096;

/** One number for a tile, different for each; columns and rows count from 0. */
export function tileNumber(column: number, row: number): number {
  return row * COLUMNS + column;
}

/** The box of a part whose top left corner lies at `corner`. */
export function boxAt({ width, height }: MappedPart, { x, y }: Point): Box {
  return { left: x, top: y, right: x + width, bottom: y + height };
}

/** The part with the top left corner of its box at `corner`, which is not left of or above zero. */
export function laidAt(mapped: MappedPart, corner: Point, tile: TileSize): Laid {
  const { part, ink } = mapped;
  const box = boxAt(mapped, corner);
  const [toPartX, toPartY] = [part.box.left - box.left, part.box.top - box.top];
  const tiles: number[] = [];
  for (let row = Math.floor(box.top / tile.height); row * tile.height < box.bottom; row++) {
    for (
      let column = Math.floor(box.left / tile.width);
      column * tile.width < box.right;
      column++
    ) {
      const left = column * tile.width + toPartX;
      const top = row * tile.height + toPartY;
      if (ink(left, top, left + tile.width, top + tile.height)) {
        tiles.push(tileNumber(column, row));
      }
    }
  }
  const cuts = (part.whole ?? []).filter(
    ({ left, top, right, bottom }) =>
      isCut(left - toPartX, right - toPartX, tile.width) ||
      isCut(top - toPartY, bottom - toPartY, tile.height),
  ).length;
  return { mapped, box, tiles, cuts };
}

/** Whether a join of tiles, each `step` mm long, lies between two places. */
function isCut(from: number, to: number, step: number): boolean {
  return Math.floor(from / step) !== Math.floor(to / step);
}

/** Moved by whole tiles. */
export function shifted(laid: Laid, columns: number, rows: number, tile: TileSize): Laid {
  const [x, y] = [columns * tile.width, rows * tile.height];
  const { left, top, right, bottom } = laid.box;
  const by = tileNumber(columns, rows);
  return {
    mapped: laid.mapped,
    cuts: laid.cuts,
    box: { left: left + x, top: top + y, right: right + x, bottom: bottom + y },
    tiles: laid.tiles.map((number) => number + by),
  };
}

/** The parts closed up where a whole row or column of tiles is blank. */
export function closedUp(laid: readonly Laid[], tile: TileSize): readonly Laid[] {
  const columnOf = (number: number): number => number % COLUMNS;
  const rowOf = (number: number): number => Math.floor(number / COLUMNS);
  // A part prints on every row and column that it reaches, so it moves as one.
  const blanksBefore = (part: Laid, lineOf: (number: number) => number): number => {
    const first = Math.min(...part.tiles.map(lineOf));
    const used = new Set(laid.flatMap(({ tiles }) => tiles.map(lineOf)));
    return first - [...used].filter((line) => line < first).length;
  };
  return laid.map((part) =>
    shifted(part, -blanksBefore(part, columnOf), -blanksBefore(part, rowOf), tile),
  );
}

/** How many tiles several parts print on together. */
export function tileCount(laid: readonly Laid[]): number {
  const touched = new Set<number>();
  for (const { tiles } of laid) for (const tile of tiles) touched.add(tile);
  return touched.size;
}
