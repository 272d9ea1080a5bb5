/** The booklet of a graded result: every number in it comes from the draft, the chart or the lays. */
import { present } from '../lists/present';
import type { GradeResult } from '../jobs/grade-result';
import type { PiecePlan } from '../pattern/piece';
import { shopLength, shopZipIn } from '../pattern/shop-length';
import type { Booklet, ListedPiece } from '../print/booklet/booklet';
import { cautions } from '../print/instructions';
import { inMarket } from '../print/size-table';
import type { SizeTable } from '../print/size-table';
import { zipEnd, zipOf } from '../pattern/zip';
import { SAME_PLACE } from '../tolerance';
import { cuttings, hasNoGrain, linesNote, sizesDrawn } from '../render/captions';
import { linesShown } from '../render/nest-drawing';
import type { SewnSkirt } from '../sewing/skirt';
import { hasDarts, sewnSkirt } from '../sewing/skirt';
import { sewingSteps } from '../sewing/sewing-steps';
import { imprintWords } from '../table/imprint';
import { drawingOf } from './drawing-files';

/**
 * Of a skirt of front and back everything is told; of another pattern what its pieces show. `measures`
 * are tables of bodies and garments, `cloth` those of the lays.
 */
export function bookletOf(
  result: GradeResult,
  measures: readonly SizeTable[],
  cloth: readonly SizeTable[],
): Booklet {
  const { title, imprint, range, shown, display } = result;
  const base = range.sizes.find(({ label }) => label === range.base) ?? shown[0];
  const pieces = base?.pieces ?? [];
  const zip = base && zipOf(base.pieces, base.parameters);
  const skirt = sewnSkirt(shown, display);
  const zips = zipTable(result);
  return {
    title,
    facts: present([
      sizesDrawn(drawingOf(result)),
      skirt && garmentWords(skirt),
      ...[imprintWords(imprint)].filter((words) => words !== ''),
    ]),
    garment: skirt && { pieces, zip },
    body: bodyOf(result),
    choosing: skirt === undefined ? [] : choosing(result, skirt),
    measures,
    needs: present([...cloth, zips]),
    notions: skirt === undefined ? [] : notions(skirt),
    pieces: listedPieces(result),
    cutting: cutting(result, cloth.length > 0),
    steps: skirt === undefined ? [] : sewingSteps(skirt),
    pictured: { pieces, zipEnd: zip === undefined ? 0 : zipEnd(zip) },
    toile: skirt === undefined ? [] : toile(skirt),
    cautions: cautions(measures, ['paper']),
  };
}

/** `Skirt with waistband, lining, zip and vent at center back`. */
function garmentWords({ band, facings, linings, opening }: SewnSkirt): string {
  const finish = band !== undefined ? ['waistband'] : facings.length > 0 ? ['waist facing'] : [];
  const lined = linings.length > 0 ? ['lining'] : [];
  const below = opening === 'none' ? 'zip' : `zip and ${opening}`;
  const first = [...finish, ...lined];
  return `Skirt with ${first.length > 0 ? `${first.join(', ')}, and ` : ''}${below} at center back`;
}

/** The base size, for the figure. */
function bodyOf({ chart, range }: GradeResult): Booklet['body'] {
  const column = chart?.sizes.indexOf(range.base) ?? -1;
  const value = (name: string): number | undefined =>
    chart?.rows.find((row) => row.name === name)?.values[column] ?? undefined;
  const [waist, hip, waistToHip] = [
    value('waist_girth'),
    value('hip_girth'),
    value('waist_to_hip'),
  ];
  return waist === undefined || hip === undefined || waistToHip === undefined
    ? undefined
    : { waist, hip, waistToHip };
}

function choosing(result: GradeResult, skirt: SewnSkirt): readonly string[] {
  const { shown } = result;
  const waist = [
    'the waist',
    ...(hasDarts(skirt) ? ['its darts'] : []),
    ...(skirt.band !== undefined
      ? ['the waistband']
      : skirt.facings.length > 0
        ? ['the facing']
        : []),
  ];
  const ease = (['waist', 'hip'] as const).flatMap((name) => {
    const words = easeWords(result, name);
    return words === undefined ? [] : [`${words} at the ${name}`];
  });
  return [
    'W, waist: around the body where it bends to the side, the tape level and close but not tight.',
    'H, hip: around the fullest place of hip and seat, the tape level.',
    'D, waist to hip: how far H lies below W, along the side.',
    (shown.length > 1 ? 'Choose by the hip: the waist is easier to alter. ' : '') +
      'Compare what you measured with the body measurements, not with the finished garment' +
      (ease.length > 0 ? `, which is wider by ${ease.join(' and ')}.` : '.'),
    ...(shown.length > 1
      ? [
          `Between two sizes: cut ${listed(waist)} in the size of your ` +
            'waist, and everything from the hip line down in the size of your hip. Between them draw the ' +
            'side as one smooth curve from the side point of the one at the waist to the other at the hip ' +
            `line, the same on ${sidePieces(skirt)}, and measure that both side seams are equally long.`,
        ]
      : []),
  ];
}

/** `a, b and c`. */
function listed(words: readonly string[]): string {
  return [words.slice(0, -1).join(', '), ...words.slice(-1)]
    .filter((part) => part !== '')
    .join(' and ');
}

/** The pieces that have the side seam. */
function sidePieces({ linings }: SewnSkirt): string {
  return linings.length > 0 ? 'front, back and linings' : 'front and back';
}

/** By how much the garment is wider than the body, over the sizes; undefined where one is not known. */
function easeWords(
  { chart, shown, display }: GradeResult,
  name: 'waist' | 'hip',
): string | undefined {
  const row = chart?.rows.find((one) => one.name === `${name}_girth`);
  const eases = shown.flatMap(({ label, measures }) => {
    const body = row?.values[chart?.sizes.indexOf(label) ?? -1];
    const finished = measures.find((measure) => measure.name === name)?.value;
    return body == null || finished === undefined ? [] : [finished - body];
  });
  if (eases.length === 0 || eases.length < shown.length) return undefined;
  if (Math.max(...eases) <= SAME_PLACE) return undefined;
  const [least, most] = [Math.min(...eases), Math.max(...eases)].map((mm) =>
    shopLength(mm, display),
  );
  return least === most ? least : `${least} to ${most}`;
}

function zipTable({ shown, display }: GradeResult): SizeTable | undefined {
  const zips = shown.map(({ pieces, parameters }) => zipOf(pieces, parameters)?.length);
  if (zips.every((mm) => mm === undefined)) return undefined;
  const cells = (unit: 'cm' | 'in'): readonly string[] =>
    zips.map((mm) => (mm === undefined ? '-' : shopZipIn(mm, unit)));
  const table = {
    heading: 'Zip to buy, as it is sold',
    sizes: shown.map(({ label }) => label),
    rows: [
      {
        name: 'zip',
        lines: (['cm', 'in'] as const).map((unit) => ({ unit, cells: cells(unit) })),
      },
    ],
  };
  return inMarket(table, display.unit);
}

function notions({ band, facings, zip, told }: SewnSkirt): readonly string[] {
  const opening = told(({ pieces, parameters }) => zipOf(pieces, parameters)?.opening);
  return [
    'Thread that suits the cloth.',
    ...(zip === undefined
      ? [`A zip at least as long as the opening at center back: ${opening}.`]
      : []),
    band === undefined
      ? 'One hook and eye.'
      : 'One skirt hook and bar, or a button, for the waistband.',
    ...(band === undefined && facings.length === 0
      ? ['Bias strip or firm ribbon for the waist: this pattern has no piece for it.']
      : []),
    'Pins, chalk, hand needles, a tape measure, and glue or tape for the paper.',
    'Cheap cloth of the same weight for the first toile.',
  ];
}

function listedPieces({ shown }: GradeResult): readonly ListedPiece[] {
  const plans = shown[0]?.pieces.map(({ plan }) => plan) ?? [];
  return plans.map((plan, i) => ({
    number: shown[0]?.cutPieces?.find(({ piece }) => piece.plan === plan)?.number ?? i + 1,
    name: plan.name.replace(/_/g, ' '),
    cuttings: cuttings(plan),
  }));
}

/** How a piece that says which side is up is laid on folded cloth, for the sides that one says. */
const FACES: readonly (readonly [side: string, how: string])[] = [
  ['right side up', 'its print down'],
  ['wrong side up', 'its print up'],
];

function faceTold(plans: readonly PiecePlan[]): readonly string[] {
  const stated = plans.flatMap(cuttings).join();
  const told = FACES.filter(([side]) => stated.includes(side)).map(
    ([side, how]) => `one that says ${side} is laid there with ${how}`,
  );
  return told.length === 0
    ? []
    : [`Folded cloth lies right sides together, so its wrong side is up: ${listed(told)}.`];
}

/** What a pattern has that is told of before cutting; what it lacks is not spoken of. */
function cutting(result: GradeResult, isLaid: boolean): readonly string[] {
  const plans = result.shown[0]?.pieces.map(({ plan }) => plan) ?? [];
  const drawing = drawingOf(result);
  const isNet = linesShown(drawing) === 'net';
  return [
    linesNote(drawing, result.shown.length) + (isNet ? ` ${allowanceToAdd(result)}` : ''),
    ['Wash and press the cloth first.', ...layingTold(plans)].join(' '),
    ...(plans.some(hasNoGrain) ? [isLaid ? NO_GRAIN_LAID : NO_GRAIN] : []),
    ...faceTold(plans),
    ...pairsTold(plans),
    ...markingTold(plans),
  ];
}

function allowanceToAdd({ chart }: GradeResult): string {
  const add = 'Add a seam allowance to every edge but folds as you cut';
  return chart === undefined ? `${add}, unless they have one already.` : `${add}.`;
}

const NO_GRAIN_LAID =
  'A piece without a grainline lies as in the pictures of the lays; ask whoever drew it before you turn it.';
const NO_GRAIN = 'Ask whoever drew it how a piece without a grainline lies on the cloth.';

function layingTold(plans: readonly PiecePlan[]): readonly string[] {
  const laid = [
    ...(plans.every(hasNoGrain) ? [] : ['each piece with its grainline along the selvage']),
    ...(plans.some(({ cuttings: cut }) => cut.some(({ onFold }) => onFold))
      ? ['an edge marked as fold on the fold']
      : []),
  ];
  return [
    ...(laid.length > 0 ? [`Lay ${laid.join(', and ')}.`] : []),
    'With a nap or a print that has a way up, all pieces lie the same way.',
  ];
}

function pairsTold(plans: readonly PiecePlan[]): readonly string[] {
  const most = Math.max(...plans.flatMap(({ cuttings: cut }) => cut.map(({ count }) => count)));
  if (most < 2) return [];
  return [
    most === 2
      ? 'What is cut twice is a pair: on folded cloth both at once, on open cloth once as it is printed and once ' +
        'turned face down.'
      : 'What is cut more than once is cut in pairs: on folded cloth two at once, on open cloth every second one ' +
        'turned face down.',
  ];
}

function markingTold(plans: readonly PiecePlan[]): readonly string[] {
  const marks = [
    ...(plans.some(({ drillHoles }) => drillHoles.length > 0) ? ['drill holes'] : []),
    ...(plans.some(({ darts }) => darts.length > 0) ? ['the tips of darts'] : []),
  ];
  const told = [
    ...(plans.some(({ notches }) => notches.length > 0) ? ['Snip or chalk every notch.'] : []),
    ...(marks.length > 0
      ? [`Mark ${listed(marks)} with chalk or thread on the wrong side; do not punch the cloth.`]
      : []),
  ];
  return told.length > 0 ? [told.join(' ')] : [];
}

/** What to look at in the first toile, and where the skirt is altered. Common practice, no source. */
function toile(skirt: SewnSkirt): readonly string[] {
  const { band, facings, front, back } = skirt;
  const has = (name: string): boolean => front.marks.some((mark) => mark.name === name);
  const [shell, shorter, above] =
    band !== undefined
      ? ['shell and band', ', and shorten the band by as much', 'the band']
      : facings.length > 0
        ? ['the shell', ', and take as much off the facing', 'the old waist line']
        : ['the shell', '', 'the old waist line'];
  const gapes =
    back.darts.length > 0 ? 'sew the back darts deeper' : 'take the center back seam in at the top';
  const altered = `Draw the side anew as one smooth line, and do the same on ${sidePieces(skirt)}.`;
  return [
    `Sew ${shell} in cheap cloth with long stitches and leave the hem raw. Wear it with the shoes and ` +
      'the underwear of the finished skirt; sit, walk and climb a stair.',
    'Folds that run across the hip: let out both side seams alike. Folds that hang down at the side: take ' +
      `them in. The waist gapes at the back: ${gapes}${shorter}.`,
    'The side seam does not hang plumb: lift the waist at center front or back until it does, and cut off ' +
      `what stands above ${above}.`,
    ...(has('length-line')
      ? [
          'Longer or shorter: cut the paper between the double lines and spread it evenly by what is wanted, or ' +
            `fold it by as much. ${altered}`,
        ]
      : []),
    ...(has('hip-depth-line')
      ? [
          'The hip lies lower or higher than the hip line: do so at the double line above it. ' +
            `${altered} The zip changes by as much.`,
        ]
      : []),
    'Draw every change on the paper, on both pieces that meet there, and measure the seams again.',
  ];
}
