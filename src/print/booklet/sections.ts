/** The sections of a booklet as blocks for its pages. */
import { present } from '../../lists/present';
import { point } from '../../geometry/point';
import { lineDrawing } from '../../render/line-drawing';
import type { Sketch } from '../../render/sketch';
import { heightOf, moved, placedAt, sketchOf, widthOf } from '../../render/sketch';
import { fitted, text } from '../../render/type';
import type { Block } from '../flow';
import { paragraphs } from '../paragraphs';
import { picturedBlocks } from '../size-table';
import type { SizeTable } from '../size-table';
import type { Booklet, BookletChoice } from './booklet';
import { bodyPicture } from './body-picture';
import { stepPicture } from './step-picture';

/** Type sizes, mm. */
const TITLE = 10;
const FACT = 4;
const HEADING = 6;
const BODY = 3;
/** mm between a picture and its words. */
const BESIDE = 6;
/** Share of the cover's width that its drawing takes at most. No tolerance: a look. */
const COVER_SHARE = 0.95;
/** mm that the drawing on the cover is high. */
const COVER_HEIGHT = 105;

/** A heading and what stands below it; the cover has none. */
export interface Section {
  readonly heading: string | undefined;
  readonly blocks: readonly Block[];
}

/** The sections that are asked for, `width` mm wide; those with nothing to tell are left out. */
export function sections(
  booklet: Booklet,
  choice: BookletChoice,
  width: number,
): readonly Section[] {
  if (choice === 'none') return [];
  const { needs, notions, measures, toile, cautions } = booklet;
  const all: readonly Section[] = [
    { heading: undefined, blocks: [coverBlock(booklet, width)] },
    {
      heading: measures.some(({ sizes }) => sizes.length > 1)
        ? 'Choose your size'
        : 'Your measurements',
      blocks: [...choosingBlocks(booklet, width), ...tables(measures, width)],
    },
    { heading: 'You need', blocks: [...tables(needs, width), ...told(notions, width)] },
    { heading: 'Cut', blocks: cutBlocks(booklet, width) },
    { heading: 'Sew', blocks: choice === 'full' ? stepBlocks(booklet, width) : [] },
    { heading: 'The first toile', blocks: told(toile, width) },
    { heading: 'Cautions', blocks: told(cautions, width) },
  ];
  return all.filter(({ blocks }) => blocks.length > 0);
}

function coverBlock({ title, facts, garment }: Booklet, width: number): Sketch {
  const full = garment && lineDrawing(garment, COVER_HEIGHT);
  // A wide skirt is drawn lower, so that front and back stay side by side; its gaps do not shrink.
  const share = full === undefined ? 1 : Math.min(1, (COVER_SHARE * width) / widthOf(full));
  const drawing = share < 1 && garment ? lineDrawing(garment, share * COVER_HEIGHT) : full;
  const lines = facts.map((fact, i) =>
    text(fact, point(0, TITLE + 8 + 6 * i), fitted(fact, FACT, width)),
  );
  const below = TITLE + 8 + 6 * facts.length + 8;
  return sketchOf(
    present([
      text(title, point(0, TITLE), fitted(title, TITLE, width), { weight: 'bold' }),
      ...lines,
      drawing && placedAt(drawing, point(Math.max(0, (width - widthOf(drawing)) / 2), below)),
    ]),
  );
}

function tables(all: readonly SizeTable[], width: number): readonly Block[] {
  return all.flatMap((table) => picturedBlocks(table, width));
}

/** Sentences below each other as one block, which few pages tear. */
function told(sentences: readonly string[], width: number): readonly Sketch[] {
  const words = sentences.map((sentence) => ({ words: sentence, size: BODY }));
  return words.length === 0 ? [] : [sketchOf([paragraphs(words, 0, 0, width).group])];
}

function choosingBlocks({ body, choosing }: Booklet, width: number): readonly Sketch[] {
  if (choosing.length === 0) return [];
  const picture = body && bodyPicture(body);
  const left = picture === undefined ? 0 : widthOf(picture) + BESIDE;
  const words = choosing.map((sentence) => ({ words: sentence, size: BODY }));
  const beside = picture && placedAt(picture, point(0, 0));
  return [sketchOf(present([beside, paragraphs(words, left, 0, width - left).group]))];
}

/** mm of the columns of the list of pieces. */
const NUMBER = 8;
const NAME = 48;

function cutBlocks({ pieces, cutting }: Booklet, width: number): readonly Sketch[] {
  const rows = pieces.map(({ number, name, cuttings }) => {
    const cut = paragraphs(
      cuttings.map((words) => ({ words, size: BODY })),
      NUMBER + NAME,
      0,
      width - NUMBER - NAME,
    );
    return sketchOf([
      text(`${number}`, point(0, BODY), BODY, { weight: 'bold' }),
      text(name, point(NUMBER, BODY), fitted(name, BODY, NAME - 2)),
      cut.group,
    ]);
  });
  const list = stacked(rows, BODY / 2);
  return present([list, ...told(cutting, width)]);
}

function stepBlocks({ steps, pictured }: Booklet, width: number): readonly Sketch[] {
  return steps.map((step, i) => {
    const picture = stepPicture(step, pictured);
    const room = width - (picture === undefined ? 0 : PICTURE + BESIDE);
    const { group } = paragraphs(
      [
        { words: `${i + 1}. ${step.title}`, size: BODY + 0.6, weight: 'bold' },
        ...step.words.map((words) => ({ words, size: BODY })),
      ],
      0,
      0,
      room,
    );
    const beside = picture && placedAt(picture, point(width - (PICTURE + widthOf(picture)) / 2, 0));
    return sketchOf(present([group, beside]));
  });
}

/** mm of the column of pictures beside the steps. */
const PICTURE = 52;

function stacked(sketches: readonly Sketch[], between: number): Sketch | undefined {
  let y = 0;
  const placed = sketches.map((sketch) => {
    const at = moved(sketch, point(0, y));
    y += heightOf(sketch) + between;
    return at;
  });
  return placed.length === 0 ? undefined : sketchOf(placed.flatMap(({ shapes }) => shapes));
}

/** The heading of a section as a block. */
export function headingBlock(words: string): Sketch {
  return sketchOf([text(words, point(0, HEADING), HEADING, { weight: 'bold' })]);
}
