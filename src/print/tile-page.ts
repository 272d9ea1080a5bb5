/** The page of one tile: a window onto the plane, the frame to cut along, and the marks to join by. */
import type { Box } from '../geometry/bounds';
import { boxesOverlap, grownBox } from '../geometry/bounds';
import { point } from '../geometry/point';
import type { PdfPage } from '../render/pdf';
import type { Group, Shape, Stroke } from '../render/scene';
import { rectangle } from '../render/scene';
import { SOFT_INK } from '../render/size-style';
import { CAP_MIDDLE, text, textWidth } from '../render/type';
import type { Ink } from './ink';
import { hasInk } from './ink';
import { HALF_MARK, SIDES, markRoom, matchMark, matchPlace } from './match-marks';
import { RULER_LENGTH, ruler } from './ruler';
import type { TileFormat } from './tile-format';
import { RULER_STRIP } from './tile-format';
import type { Tile } from './tile-grid';

/** The layer of everything that is on a sheet only to join it to others and to measure it. */
export const SHEET_MARKS = 'Sheet marks';

/** What the pages of one plane have in common. */
export interface TiledPlane {
  readonly title: string;
  readonly shapes: readonly Group[];
  readonly ink: Ink;
  readonly tiles: readonly Tile[];
  readonly format: TileFormat;
}

const FRAME: Stroke = { color: SOFT_INK, width: 0.25 };
/** Type sizes, mm: of the name within the tile, of the name in the strip, of the notes there. */
const NAME = 9;
const STRIP_NAME = 5;
const NOTE = 2.4;

/** The page of a tile, in mm; beyond its frame the pattern goes on as far as the format says. */
export function tilePage(plane: TiledPlane, tile: Tile): PdfPage {
  const { format, shapes, title } = plane;
  const { page, corner, beyond } = format;
  const { left, top, right, bottom } = tile.box;
  const children: readonly Shape[] = [
    rectangle('tile-frame', frameOf(format), FRAME),
    ...joinMarks(plane, tile),
    ...nameWithin(plane, tile),
    ...strip(plane, tile),
  ];
  return {
    scene: {
      title: `${title}, sheet ${tile.name}`,
      ...page,
      shapes: [{ kind: 'group', layer: SHEET_MARKS, children }],
    },
    windows: [
      {
        drawing: shapes,
        part: { left, top, right: right + beyond.right, bottom: bottom + beyond.below },
        at: corner,
      },
    ],
  };
}

function frameOf({ corner, tile }: TileFormat): Box {
  return {
    left: corner.x,
    top: corner.y,
    right: corner.x + tile.width,
    bottom: corner.y + tile.height,
  };
}

function neighbor({ tiles }: TiledPlane, { column, row }: Tile, right: number, down: number) {
  return tiles.find((other) => other.column === column + right && other.row === row + down);
}

/** Diamonds on the edges, a half on each of the two sheets; one half shows the whole on its strip. */
function joinMarks(plane: TiledPlane, tile: Tile): readonly Shape[] {
  const { format } = plane;
  const { beyond, corner } = format;
  return SIDES.flatMap(({ across, down }) => {
    if (neighbor(plane, tile, across, down) === undefined) return [];
    const whole = across + down > 0 && beyond.right >= HALF_MARK && beyond.below >= HALF_MARK;
    const at = matchPlace(plane.ink, tile.box, across, down);
    const onPage = point(at.x - tile.box.left + corner.x, at.y - tile.box.top + corner.y);
    return matchMark(onPage, across, down, whole);
  });
}

/** The tile's name where it covers nothing, near a corner if it can; nowhere if all is taken. */
function nameWithin({ ink, format }: TiledPlane, { name, box }: Tile): readonly Shape[] {
  const width = textWidth(name, NAME);
  const clear = 4;
  const [lastX, lastY] = [box.right - clear - width, box.bottom - clear];
  const [firstX, firstY] = [box.left + clear, box.top + clear + NAME];
  const marks = SIDES.map(({ across, down }) => markRoom(matchPlace(ink, box, across, down)));
  const steps = [0, 1, 0.2, 0.8, 0.35, 0.65];
  for (const down of steps) {
    for (const across of steps) {
      const at = point(firstX + across * (lastX - firstX), firstY + down * (lastY - firstY));
      const room = { left: at.x, right: at.x + width, top: at.y - NAME, bottom: at.y };
      const grown = grownBox(room, 2);
      if (hasInk(ink, grown) || marks.some((mark) => boxesOverlap(mark, grown))) continue;
      const onPage = point(at.x - box.left + format.corner.x, at.y - box.top + format.corner.y);
      return [text(name, onPage, NAME, { color: SOFT_INK, weight: 'bold' })];
    }
  }
  return [];
}

/** The ruler, the name of the sheet, and which sheets go on. */
function strip(plane: TiledPlane, tile: Tile): readonly Shape[] {
  const { format, tiles, title } = plane;
  const middle = format.ruler + RULER_STRIP / 2;
  const name = format.corner.x + RULER_LENGTH;
  const words = name + textWidth(tile.name, STRIP_NAME) + 2;
  const room = format.corner.x + format.tile.width - words;
  const right = neighbor(plane, tile, 1, 0);
  const below = neighbor(plane, tile, 0, 1);
  const joins = [
    ...(right === undefined ? [] : [`${right.name} to the right`]),
    ...(below === undefined ? [] : [`${below.name} below`]),
  ].join(', ');
  const count = `Sheet ${tiles.indexOf(tile) + 1} of ${tiles.length}`;
  return [
    ...ruler(point(format.corner.x, middle)),
    text(tile.name, point(name, middle + CAP_MIDDLE * STRIP_NAME), STRIP_NAME, { weight: 'bold' }),
    text(fitting([`${count}, ${title}`, count], room), point(words, middle - 0.6), NOTE),
    ...(joins === '' ? [] : [text(fitting([joins], room), point(words, middle + 2.4), NOTE)]),
  ];
}

/** The first of the words that fit, or the last. */
function fitting(choices: readonly string[], room: number): string {
  return choices.find((words) => textWidth(words, NOTE) <= room) ?? choices.at(-1) ?? '';
}
