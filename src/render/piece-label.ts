/** What a piece says about itself: name, sizes, how often to cut it, style, number, allowances. */
import { grouped } from '../lists/grouped';
import type { CutPiece } from '../pattern/cut-piece';
import { shopLength } from '../pattern/shop-length';
import { SAME_PLACE } from '../tolerance';
import type { LengthDisplay } from '../units';
import type { NestDrawing } from './nest-drawing';
import type { NestedPiece } from './nested-piece';
import type { TextLine, Sketch } from './sketch';
import { block, blocks } from './sketch';
import { wrapped } from './type';
import { cuttings, hasNoGrain, spelled } from './captions';
import { zipStrip } from './zip-strip';

/** Type sizes, mm. */
const NAME = 16;
const CUTTING = 9;
const DETAIL = 6;
/** mm. A longer title is broken. */
const TITLE_WIDTH = 150;
/** Shares of the type size that are tried; a home printer still prints the least. */
const SMALLER = [1, 0.8, 0.6, 0.5];

/**
 * The name of a piece over the line that says which sizes it shows and how often to cut it, in
 * blocks of different size; for a narrow band each size also comes as two lines.
 */
export function nameBlocks({ reference }: NestedPiece, sizes: TextLine): readonly Sketch[] {
  const { plan } = reference;
  const name: TextLine = { words: spelled(plan.name), size: NAME, weight: 'bold' };
  const cut = [...cuttings(plan), ...(hasNoGrain(plan) ? ['No grainline given'] : [])];
  const full = [name, sizes, ...cut.map((words) => ({ words, size: CUTTING }))];
  const flat = [name, { words: [sizes.words, ...cut].join('. '), size: CUTTING }];
  const narrow = [...blocks(flat)];
  return [...blocks(full)].flatMap((sketch, i) => [sketch, ...narrow.slice(i, i + 1)]);
}

/**
 * The style, the piece's number and the allowances in blocks of different shape, the fullest first;
 * none for a piece without a cut line.
 */
export function detailBlocks(
  { sizes, lines, reference }: NestedPiece,
  { title, display }: Pick<NestDrawing, 'title' | 'display'>,
): readonly Sketch[] {
  const cuts = sizes.flatMap(({ cut }) => (cut === undefined ? [] : [cut]));
  const [first] = cuts;
  if (first === undefined) return [];
  const number = `Piece ${first.number}`;
  // Whoever adds an allowance that is drawn has it twice.
  const strip = lines === 'net' ? zipStrip(reference) : undefined;
  const allowances = allowanceWords(cuts, strip?.seams ?? [], display);
  // Along a sewing line they are still to be added.
  const heading = lines === 'net' ? 'ADD SEAM ALLOWANCES' : 'SEAM ALLOWANCES INCLUDED';
  const titled = [...wrapped(title, DETAIL, TITLE_WIDTH), number, heading];
  const versions = [
    [...titled, ...allowances],
    [...titled, allowances.join('; ')],
    [`${number}. ${heading}:`, allowances.join('; ')],
    [`${number}. ${heading}:`, ...allowances],
    [number, heading, ...allowances],
  ];
  return SMALLER.flatMap((share) =>
    versions.map((lines) => block(lines.map((words) => ({ words, size: share * DETAIL })))),
  );
}

/** `5/8 in (1.5 cm): waist, side`: one line a width, the seams in the order of the outline, then those drawn. */
function allowanceWords(
  cuts: readonly CutPiece[],
  drawn: readonly string[],
  display: LengthDisplay,
): readonly string[] {
  const folds = new Set(cuts[0]?.piece.plan.outline.filter(isFold).map(({ seam }) => seam));
  // The mouth of a tuck is part of the waist.
  const added = [...(cuts[0]?.allowances.keys() ?? [])].filter(
    (seam) => !folds.has(seam) && seam !== 'tuck' && !drawn.includes(seam),
  );
  const seams = grouped(added, (seam) => {
    const widths = cuts.map(({ allowances }) => allowances.get(seam) ?? NaN);
    return widthWords(Math.min(...widths), Math.max(...widths), display);
  });
  return [
    ...[...seams].map(([width, names]) => `${width}: ${names.map(plainName).join(', ')}`),
    ...(drawn.length > 0 ? [`drawn, add none: ${drawn.map(plainName).join(', ')}`] : []),
  ];
}

function plainName(seam: string): string {
  return seam.replace(/_/g, ' ');
}

function isFold({ kind }: { readonly kind: string }): boolean {
  return kind === 'fold';
}

/** A width, or from the least to the most where a style lets it differ between sizes. */
function widthWords(least: number, most: number, display: LengthDisplay): string {
  if (most <= SAME_PLACE) return 'none';
  if (most - least <= SAME_PLACE) return shopLength(most, display);
  return `${shopLength(least, display)} to ${shopLength(most, display)}`;
}
