/** What is drawn once on a piece for all its sizes: its words, the grainline, the fold. */
import type { Box } from '../geometry/bounds';
import { joinBoxes, pointBounds } from '../geometry/bounds';
import type { Point } from '../geometry/point';
import { add, between, point } from '../geometry/point';
import type { MarkedLine, PiecePlan } from '../pattern/piece';
import { grainWord, grainlines } from './arrows';
import { centerLines } from './center-line';
import { roomIn } from './room';
import { shapeBox } from './shape-box';
import { stackMark } from './stack-mark';
import type { NestedPiece } from './nested-piece';
import type { NestDrawing } from './nest-drawing';
import { detailBlocks, nameBlocks } from './piece-label';
import { markPoints } from './piece-lines';
import type { Group, Shape } from './scene';
import type { TextLine, Sketch } from './sketch';
import { blocks, leftOf } from './sketch';
import { spelled } from './captions';
import { zipWords } from './zip-words';

/** Type sizes, mm. */
const WORDS = 8;

/**
 * The common shapes of a piece; `sizes` is the line that says which sizes it shows. No words stand in the
 * boxes that are `reserved`.
 */
export function pieceWords(
  nested: NestedPiece,
  sizes: TextLine,
  drawing: Pick<NestDrawing, 'title' | 'display' | 'stackPoint'>,
  reserved: readonly Box[] = [],
): Sketch {
  const usual = arranged(nested, sizes, drawing, 'words', reserved);
  // Small pieces of many sizes have little room in common, and without its grain none is laid right.
  const other =
    wantsGrain(nested) && usual.grain === undefined
      ? arranged(nested, sizes, drawing, 'grain', reserved)
      : usual;
  const keeps = (part: 'name' | 'told'): boolean =>
    other[part] !== undefined || usual[part] === undefined;
  const isBetter = other.grain !== undefined && keeps('name') && keeps('told');
  const { names, details, middle, centers, name, told, grain, levels } = isBetter ? other : usual;

  const zip = zipWords(nested, drawing.display);
  const beside = zip === undefined ? [] : [zip];
  // A piece too small for its words still gets them.
  const missing = [
    ...(name === undefined ? names.slice(0, 1) : []),
    ...(told === undefined ? details.slice(0, 1) : []),
  ];
  for (const sketch of missing) {
    const nest = joinBoxes([nested.box, ...beside.map(({ box }) => box)]);
    beside.push(leftOf(nest, sketch, middle.y));
  }
  return {
    shapes: [
      ...centers,
      ...[name, told, grain, ...levels].filter((placed) => placed !== undefined),
      ...beside.flatMap(({ shapes }) => shapes),
    ],
    box: joinBoxes(beside.map(({ box }) => box)),
  };
}

/** What found room in a piece, and what there was to place. */
interface Arranged {
  readonly names: readonly Sketch[];
  readonly details: readonly Sketch[];
  readonly middle: Point;
  readonly centers: readonly Shape[];
  readonly name: Group | undefined;
  readonly told: Group | undefined;
  /** The grainline, or the word of one that is given. */
  readonly grain: Group | undefined;
  readonly levels: readonly (Group | undefined)[];
}

/** mm above or below a line to cut at that its words may stand: those of another line are further off. */
const REACH = 24;

/** What stands at a marked level, in a few words or more; undefined for a mark that needs none. */
function levelWords(
  name: MarkedLine['name'],
  { zip }: Pick<PiecePlan, 'zip'>,
): readonly (readonly TextLine[])[] | undefined {
  const how = (words: string): TextLine => ({ words, size: WORDS / 2 });
  const every = how('as much on every piece, then blend the side seams');
  const title = (words: string): TextLine => ({ words, size: WORDS - 2 });
  switch (name) {
    case 'hip-line':
      return [[{ words: spelled(name), size: WORDS - 1 }]];
    case 'length-line': {
      const here = title('LENGTHEN OR SHORTEN HERE');
      return [[here, every], [here]];
    }
    case 'hip-depth-line': {
      const here = title('LENGTHEN OR SHORTEN HIP DEPTH HERE');
      const withZip = 'the zip changes by as much';
      const more = zip ? [how(withZip)] : [];
      return [
        [here, every, ...more],
        [here, ...more],
        // Between the scales of many sizes there is room for narrow words alone.
        [title('LENGTHEN OR SHORTEN'), title('HIP DEPTH HERE'), ...(zip ? [title(withZip)] : [])],
      ];
    }
    default:
      return undefined;
  }
}

/** The engine draws the grain of what it drafts; a given piece has its own, or none. */
function wantsGrain({ reference: { plan } }: NestedPiece): boolean {
  return plan.part !== 'piece' && !plan.marks.some((mark) => mark.name === 'grainline');
}

/** Places the words and the grainline; `first` is what is sure of its room. */
function arranged(
  nested: NestedPiece,
  sizes: TextLine,
  drawing: Pick<NestDrawing, 'title' | 'display' | 'stackPoint'>,
  first: 'words' | 'grain',
  reserved: readonly Box[],
): Arranged {
  const { plan } = nested.reference;
  const room = roomIn(nested);
  for (const ring of stackMark(nested, drawing.stackPoint)) room.reserve(shapeBox(ring));
  for (const box of reserved) room.reserve(box);
  const home = commonBox(nested);
  const width = home.right - home.left;
  const height = home.bottom - home.top;
  const at = (across: number, down: number): Point =>
    point(home.left + across * width, home.top + down * height);
  // A waistband must not give, so its length lies along the grain.
  const isBand = plan.part === 'waistband' && width > height;
  // One that is folded along its middle has room above and below.
  const level = plan.marks.some((mark) => mark.name === 'fold-line') ? 0.25 : 0.5;

  const names = nameBlocks(nested, sizes);
  const centers = centerLines(nested, room, WORDS);
  const own = nested.grain.shared ?? nested.grain.own.find((line) => line !== undefined);
  const word = own && grainWord(own, WORDS);
  const grainTold = word && room.put(word.choices, word.near);
  // As short as may be, so that the words keep their room.
  const shortest = first === 'grain' ? [...grainlines(0, 'down', WORDS)].slice(-1) : [];
  const early = room.put(shortest, at(0.85, 0.5));
  const details = detailBlocks(nested, drawing);
  const forName = { choices: names, near: isBand ? at(0.5, 1 - level) : at(0.5, 0.47) };
  const forDetails = { choices: details, near: isBand ? at(0.3, level) : at(0.5, 0.64) };
  const [name, told] = room.putTogether([forName, ...(details.length > 0 ? [forDetails] : [])]) ?? [
    room.put(forName.choices, forName.near),
    room.put(forDetails.choices, forDetails.near),
  ];
  const grain =
    early !== undefined || !wantsGrain(nested)
      ? early
      : isBand
        ? room.put(grainlines(width, 'across', WORDS), at(0.77, level))
        : room.put(grainlines(height, 'down', WORDS), at(0.5, 0.77));
  const levels = plan.marks.flatMap((mark) => {
    const choices = levelWords(mark.name, plan)?.flatMap((lines) => [...blocks(lines)]);
    if (choices === undefined) return [];
    const path = markPoints(nested.reference, mark);
    const [start = at(0, 0), end = start] = [path[0], path.at(-1)];
    const beside = between(start, end, 0.72);
    return mark.name === 'hip-line'
      ? [room.put(choices, add(beside, point(0, -WORDS)))]
      : [room.put(choices, beside, REACH)];
  });

  return {
    names,
    details,
    middle: at(0.5, 0.5),
    centers,
    name,
    told,
    grain: grain ?? grainTold,
    levels,
  };
}

/** What the boxes of all sizes have in common: the part of the sheet where words belong. */
function commonBox({ outlines }: NestedPiece): Box {
  return outlines.map(pointBounds).reduce((a, b) => ({
    left: Math.max(a.left, b.left),
    top: Math.max(a.top, b.top),
    right: Math.min(a.right, b.right),
    bottom: Math.min(a.bottom, b.bottom),
  }));
}
