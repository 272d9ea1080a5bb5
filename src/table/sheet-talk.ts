/**
 * Lines that talk of how a sheet counts, and of nothing else: all of their words are words for that. What
 * they say holds for every cell, in whatever order it is put. A note for a maker has some other word: a
 * dart, a cloth, a name, a month.
 */

type Kind =
  | 'link'
  | 'telling'
  | 'cells'
  | 'moves'
  | 'sizes'
  | 'part'
  | 'whole'
  | 'order'
  | 'turn'
  | 'axis';

const WORDS: Readonly<Record<Kind, string>> = {
  link:
    'a all an and are as at be between by each every for from go goes here in is it made of off on one only or ' +
    'other pattern per real run runs stands taken than that the these this to true was were with where which',
  telling:
    'count counted counting counts equal equals given mean means noted read show shown shows told ' +
    'typed written',
  cells:
    'cell cells column columns digit digits entries entry everything figure figures number numbers ' +
    'row rows unit units value values amount amounts',
  moves:
    'change changes difference differences grade graded grades grading growth grows increment ' +
    'increments move moves rule rules step steps',
  sizes:
    'base begin begins block drafted drawn fitted fitting master middle nest nested origin reference sample size ' +
    'sizes start starting starts zero',
  part:
    'double doubled eighth eighths half halved halves hundredth hundredths quarter quarters scaled ' +
    'sixteenth sixteenths sixty-fourth sixty-fourths tenth tenths thirty-second thirty-seconds thousandths ' +
    'times twice',
  whole: 'body circumference circumferences full garment girth girths skirt total totals whole',
  order:
    'accumulated against bigger biggest cumulative descending down downward downwards first highest larger largest ' +
    'last lowest next previous rel relative smaller smallest up upward upwards',
  turn: 'exchanged flipped interchanged opposite reversed swapped transposed turned',
  axis:
    'across along axes axis dx dy height heights horizontal horizontally length lengths minus ' +
    'negative plus positive right left sideways sign signs vertical vertically width widths x y',
};

const KINDS: ReadonlyMap<string, Kind> = new Map(
  (Object.keys(WORDS) as Kind[]).flatMap((kind) =>
    WORDS[kind].split(' ').map((word) => [word, kind] as const),
  ),
);

const TOKEN =
  /\p{L}+(?:-\p{L}+)*|\d+ ?[/\u2044] ?\d+|\d+(?:[.,]\d+)?[a-z]*|[\u00BC-\u00BE\u2150-\u215E]|[^\s\p{L}\d.,;()!]/gu;
const NUMBER = /^\d/u;
const PART = /^(?:1 ?[/\u2044] ?(?:2|4|5|8|10|16|20|32|64|100)|[\u00BD\u00BC\u2155\u215B\u2152])$/u;
const UNIT = /^(?:mm|cm|ins?|inch(?:es)?|["\u2033])$/u;
const SIGN = /^[=:/*x\u00D7+\u2212>-]$/u;
/** Labels of sizes as they stand among words; a year has more digits. */
const LABEL = /^(?:\d{1,2}w?|\d?x+[sl]|[sml])$/u;

type Talk = readonly string[];

/** The words of a line in lower case, where all of them are about how a sheet counts; else none. */
function talkIn(text: string): Talk {
  const words =
    text
      .replace(/->|\u2192/gu, '=')
      .toLowerCase()
      .match(TOKEN) ?? [];
  const isTalk = words.every(
    (word) =>
      KINDS.has(word) ||
      NUMBER.test(word) ||
      PART.test(word) ||
      UNIT.test(word) ||
      SIGN.test(word) ||
      LABEL.test(word),
  );
  return isTalk ? words : [];
}

const has = (talk: Talk, ...kinds: readonly Kind[]): boolean =>
  talk.some((word) => kinds.some((kind) => KINDS.get(word) === kind));

const EQUALS = String.raw`(?:=|equals?|means?|is|stands for)(?: an?)?`;
const RULER_PART = String.raw`(?:1 ?[/\u2044] ?\d+|[\u00BD\u00BC\u2155\u215B\u2152]|${WORDS.part.replaceAll(' ', '|')})`;
/** One, or none, that stands for another number; other whole numbers may be sizes of two countries. */
const SUM = new RegExp(
  String.raw`(?<!\S)(?:[01]|one) ${EQUALS} (?:\d|${RULER_PART})|\d ${EQUALS} (?:[01](?!\S)|one\b|${RULER_PART})`,
  'u',
);

/** `cell = sixteenth`, `1 = 1/16`, `figures doubled`: cells that count something else than units. */
export function talksOfParts(text: string): boolean {
  const talk = talkIn(text);
  if (talk.length === 0) return false;
  if (SUM.test(talk.join(' '))) return true;
  const isPart = has(talk, 'part') || talk.some((word) => PART.test(word));
  return isPart && has(talk, 'cells', 'telling');
}

/** Words that say how many, or how long, the number before them is. */
const COUNTED = /^(?:cells|moves)$/u;

/** The labels of sizes in a line, each with the words before it. */
function labelsIn(talk: Talk): readonly { readonly label: string; readonly before: Talk }[] {
  return talk.flatMap((label, i) => {
    const [before = '', after = ''] = [talk[i - 1], talk[i + 1]];
    const isCount =
      /^(?:of|by)$/u.test(before) ||
      KINDS.get(before) === 'cells' ||
      UNIT.test(after) ||
      COUNTED.test(KINDS.get(after) ?? '') ||
      /^(?:sizes|times)$/u.test(after) ||
      (label === '0' && talk.includes('='));
    return LABEL.test(label) && !isCount ? [{ label, before: talk.slice(0, i) }] : [];
  });
}

/** The size that a line says is drawn, or counted from; undefined for none, and for a range. */
function sizeNamed(talk: Talk): string | undefined {
  const [first, ...others] = labelsIn(talk);
  if (first === undefined || talk.some((word) => /^(?:larger|bigger|smaller)$/u.test(word)))
    return undefined;
  const isOfMoves = has(talk, 'moves');
  // A range has two ends; only what counts down from one of them has it for its base.
  const [second] = others;
  if (second !== undefined) {
    const falls = talk.includes('down') || Number(first.label) > Number(second.label);
    return falls && isOfMoves ? first.label : undefined;
  }
  const leads = first.before.filter((word) => word !== 'size' && word !== 'the');
  const lead = leads.at(-1) ?? '';
  if (lead === 'to')
    return /^(?:rel|relative|equal)$/u.test(leads.at(-2) ?? '') ? first.label : undefined;
  const isSize = talk.some((word) => KINDS.get(word) === 'sizes' && !/^sizes?$/u.test(word));
  const isEnd = talk.some((word) => /^(?:largest|biggest|smallest|first|last)$/u.test(word));
  const isLed = /^(?:from|at|on|in|off|with|for)$/u.test(lead) && isOfMoves;
  return isSize || isLed || (talk.includes('size') && !isEnd) ? first.label : undefined;
}

/** `fitted size 10`, `nested on 14`, `growth from 16 down`: a size other than `base` to start from. */
export function talksOfSize(text: string, base: string | undefined): boolean {
  const size = sizeNamed(talkIn(text));
  return size !== undefined && size !== base?.toLowerCase();
}

const FALLING =
  /\b(?:descending|reversed|(?:from|with|off|against)(?: the)? (?:largest|biggest))\b/u;

/** `descending steps`, `each size from the next larger`: steps that lead from large to small. */
export function talksOfDescent(text: string): boolean {
  const talk = talkIn(text);
  const line = talk.join(' ');
  if (/\bnext (?:larger|bigger)\b/u.test(line)) return true;
  if (/\b(?:first|last) column\b/u.test(line))
    return /\b(?:base|zero|origin|starts?)\b/u.test(line);
  return has(talk, 'moves') && FALLING.test(line) && !/\bsmallest\b/u.test(line);
}

const ALONG_X = /^(?:across|horizontal|horizontally|sideways|widths?)$/u;
const ALONG_Y = /^(?:heights?|lengths?|vertical|vertically)$/u;

/** `x vertical`, `dx and dy swapped`: axes that are named for each other. */
export function talksOfTurnedAxes(text: string): boolean {
  const talk = talkIn(text);
  const names = (form: RegExp): boolean => talk.some((word) => form.test(word));
  const [x, y] = [names(/^d?x$/u), names(/^d?y$/u)];
  if (/\bfrom (?:the )?right\b/u.test(talk.join(' '))) return true;
  if (x && y) return has(talk, 'turn');
  return (x && names(ALONG_Y)) || (y && names(ALONG_X));
}

/** `moves of the whole skirt`, `girth steps`: what a girth grows by, of which a point moves a part. */
export function talksOfWholes(text: string): boolean {
  const talk = talkIn(text);
  const line = talk.join(' ').replace(/\bwhole numbers\b/u, '');
  const isWhole = /\b(?:girths?|circumferences?|whole|totals?)\b/u.test(line);
  return isWhole && !/\d/u.test(line) && has(talk, 'moves', 'cells');
}

/**
 * `steps from size to size`, or `cumulative`: cells that are steps where they stand for `moves` from the
 * base, or the other way round. How large they are is no such thing.
 */
export function talksOfOtherForm(text: string, form: 'move' | 'step'): boolean {
  const talk = talkIn(text);
  const line = talk.join(' ');
  if (/\d|\bbase\b/u.test(line)) return false;
  return form === 'move'
    ? /\b(?:steps?|differences?)\b/u.test(line)
    : /\b(?:cumulative|accumulated|totals)\b/u.test(line);
}
