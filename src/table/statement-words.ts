/** The words by which lines of a file state something, however people put them. */
import { parseNumberCell } from './number-cell';
import { tidyText } from './tidy-text';
import { unitNamed } from './unit-name';

/** What a file can state of itself. */
export type StatementName =
  | 'unit'
  | 'y'
  | 'base'
  | 'sizes'
  | 'blank'
  | 'zero'
  | 'pieces'
  | 'title'
  | 'designer'
  | 'version'
  | 'date'
  | 'copyright'
  | 'allowance'
  | 'based on'
  | 'not read';

/** A part of a line: what it states, or no name for prose. `typed` is the part as it stands. */
export interface LinePart {
  readonly name?: StatementName;
  readonly text: string;
  readonly typed: string;
}

interface Form {
  readonly name: StatementName;
  /** The words before the colon. */
  readonly words: string;
  /** Words that may stand between those and the value where there is no colon. */
  readonly links?: string;
  /** The value in the engine's own words, where it is one; undefined for prose. */
  readonly value: (text: string) => string | undefined;
  /** Whether the value may go on behind a comma or `and`. */
  readonly goesOn?: true;
  /** Whether only a colon, or the comma of a table, tells the value from prose. */
  readonly needsMark?: true;
}

const matching =
  (form: RegExp) =>
  (text: string): string | undefined =>
    form.test(text) ? text : undefined;

const SIZE = String.raw`(?:(?=[\p{L}\d/]{1,8}(?:[\s,;]|$))\p{L}{0,3}\d[\p{L}\d/]*|\d?x*[sml])`;
const LIST = new RegExp(String.raw`^${SIZE}(?:(?:[\s,;]+|,? and )${SIZE})+$`, 'iu');

const FORMS: readonly Form[] = [
  {
    name: 'unit',
    words:
      'units?(?: of (?:measure(?:ment)?s?|lengths?))?|(?:all )?(?:measurements|lengths|numbers)(?: are)? in',
    links: 'is|are|in',
    value: unitNamed,
  },
  {
    name: 'y',
    words:
      '(?:positive |direction of )?\\+?y(?:[- ]?(?:axis|direction|values?|coordinates?))?(?: positive)?',
    links: '(?:is |are )?(?:runs?|goes|go|counts?|points?|positive|is|are)',
    value: (text) => /^(up|down)(?:wards?)?$/iu.exec(text)?.[1]?.toLowerCase(),
  },
  {
    name: 'base',
    words: 'base(?:[- ]size)?|sample[- ]size',
    links: 'is',
    value: matching(new RegExp(`^${SIZE}$`, 'iu')),
  },
  { name: 'sizes', words: 'sizes|size range', links: 'are', value: matching(LIST), goesOn: true },
  {
    name: 'blank',
    words: '(?:blanks?|empty|dash(?:es)?)(?: cells?)?',
    links: 'is|are|means?|stands? for|counts? as',
    value: matching(/^(?:0|zeros?)$/iu),
  },
  {
    name: 'zero',
    words: 'zero(?: point)?',
    links: 'is|at|is at',
    value: matching(/^[\p{L}\d]+(?:_[\p{L}\d]+)+(?: ?\+ ?[\p{L}\d_]+)*$/iu),
  },
  { name: 'pieces', words: 'pieces?', value: (text) => text, goesOn: true, needsMark: true },
  ...(['title', 'designer', 'version', 'date', 'copyright'] as const).map((name): Form => ({
    name,
    words: name,
    value: (text) => text,
    goesOn: true,
    needsMark: true,
  })),
  {
    name: 'allowance',
    words: '(?:all )?(?:seam[- ])?allowances?',
    links: 'is|are|of',
    value: (text) => (parseNumberCell(text).kind === 'number' ? text : undefined),
    goesOn: true,
  },
  { name: 'based on', words: 'based (?:up)?on(?: style)?', value: (text) => text, goesOn: true },
  { name: 'based on', words: '(?:base )?style', links: 'is', value: matching(/^[\w-]+$/u) },
];

interface Heads {
  readonly form: Form;
  /** What the others begin with, which takes far longer to compile. */
  readonly begins: RegExp;
  readonly marked: RegExp;
  readonly bare: RegExp;
  readonly alone: RegExp;
}

/** How a statement begins: cheaper than to ask each of the forms, which few lines begin with. */
const HEAD = new RegExp(`^(?:${FORMS.map(({ words }) => words).join('|')})`, 'iu');

const HEADS: readonly Heads[] = FORMS.map((form) => {
  const words = `(?:${form.words})`;
  const links = form.links === undefined ? '' : `(?:(?:${form.links}) )?`;
  return {
    form,
    begins: new RegExp(`^${words}`, 'iu'),
    marked: new RegExp(String.raw`^${words}\s*(?:[:=]|->|\u2192)\s*(.*)$`, 'iu'),
    bare: new RegExp(String.raw`^${words}(?: [-\u2013] | )${links}(.+)$`, 'iu'),
    alone: new RegExp(`^${words}$`, 'iu'),
  };
});

/**
 * `cm`, `all lengths in cm`, `all lengths are in centimeters`. Capitals are spelled out: the flag for them
 * folds every letter there is, which takes longer than to read a chart.
 */
const UNIT_ALONE = /^(?<before>(?:\p{L}+ ){0,4}[Ii][Nn] )?(?<unit>\p{L}+|[CMcm]\. ?[Mm]\.?)$/u;
/** `up is positive`, `positive is up`. */
const DIRECTION_ALONE = /^(?:positive is (?<after>up|down)|(?<before>up|down) is positive)$/iu;

/** `not read: ...`: whoever writes it knows that it states nothing. */
const NOT_READ = /^not read\s*[:=,]\s*(.*)$/iu;

/** What may part two statements of one line. */
const BETWEEN = /\s*[,;|()[\]]\s*|\s+(?:and|&|\/)\s+|[.!]\s+|[.!]+$/giu;

interface OpenPart {
  readonly form: Form;
  readonly isMarked: boolean;
  text: string;
  typed: string;
}

/**
 * The parts of a line in their order. `unit cm, y up` states two things, `unit: cm; base: 10` too,
 * and so do `unit,cm` and `base size 10`, as a spreadsheet or a hand writes them. What has a colon
 * behind a known name is a statement whatever follows; the rest only where it can be nothing else.
 */
export function statementsIn(line: string): readonly LinePart[] {
  const text = tidyText(line);
  const remark = NOT_READ.exec(text)?.[1];
  if (remark !== undefined) return [{ name: 'not read', text: remark, typed: text }];
  const chunks = chunksOf(text);
  const parts: LinePart[] = [];
  let open: OpenPart | undefined;
  const close = (): void => {
    if (open !== undefined) parts.push(closed(open));
    open = undefined;
  };
  for (const [i, { chunk, before }] of chunks.entries()) {
    const isComma = /^[,;|]/u.test((chunks[i + 1]?.before ?? '').trim());
    const started = opened(chunk, isComma);
    const alone = started === undefined ? standingAlone(chunk, i > 0) : undefined;
    if (started !== undefined) {
      close();
      open = started;
    } else if (alone !== undefined && open?.text !== '') {
      close();
      parts.push(alone);
    } else if (open !== undefined && (open.text === '' || !isComplete(open))) {
      open.text += open.text === '' ? chunk : before + chunk;
      open.typed += before + chunk;
    } else {
      close();
      if (chunk !== '') parts.push({ text: chunk, typed: chunk });
    }
  }
  close();
  return parts;
}

function chunksOf(text: string): readonly { readonly chunk: string; readonly before: string }[] {
  const chunks: { chunk: string; before: string }[] = [];
  let [start, before] = [0, ''];
  for (const { 0: sign, index } of text.matchAll(BETWEEN)) {
    chunks.push({ chunk: text.slice(start, index), before });
    [start, before] = [index + sign.length, sign];
  }
  chunks.push({ chunk: text.slice(start), before });
  return chunks;
}

/** The statement that a chunk begins; one without a colon only where its value can be one. */
function opened(chunk: string, isComma: boolean): OpenPart | undefined {
  if (!HEAD.test(chunk)) return undefined;
  for (const { form, begins, marked, bare, alone } of HEADS) {
    if (!begins.test(chunk)) continue;
    const stated = marked.exec(chunk)?.[1];
    if (stated !== undefined) return { form, isMarked: true, text: stated, typed: chunk };
    if (isComma && alone.test(chunk)) return { form, isMarked: false, text: '', typed: chunk };
    if (form.needsMark) continue;
    const value = bare.exec(chunk)?.[1];
    if (value === undefined) continue;
    if (form.goesOn || form.value(value) !== undefined)
      return { form, isMarked: false, text: value, typed: chunk };
  }
  return undefined;
}

/** Characters. No unit, direction or label of a size is longer. */
const LONGEST_WORD = 60;

function isComplete({ form, text }: OpenPart): boolean {
  if (form.goesOn || text.length > LONGEST_WORD) return false;
  return form.value(text) !== undefined;
}

function closed({ form, isMarked, text, typed }: OpenPart): LinePart {
  const bare = tidyText(text.replace(/[.)\]]+$/u, ''));
  const value = form.value(bare) ?? (isMarked ? tidyText(text) : undefined);
  if (value === undefined || (value === '' && !isMarked)) return { text: typed, typed };
  const isWords = form.goesOn === true && form.needsMark === true && form.name !== 'pieces';
  return { name: form.name, text: isWords ? tidyText(text) : value, typed };
}

/** A unit or a direction without its name; the word `in` alone among others is most often none. */
function standingAlone(chunk: string, isAmongOthers: boolean): LinePart | undefined {
  const { before, unit = '' } = UNIT_ALONE.exec(chunk)?.groups ?? {};
  const named = unitNamed(unit);
  const isWord = isAmongOthers && before === undefined && /^in$/iu.test(unit);
  if (named !== undefined && !isWord) return { name: 'unit', text: named, typed: chunk };
  const way = DIRECTION_ALONE.exec(chunk)?.groups;
  const stated = (way?.after ?? way?.before)?.toLowerCase();
  return stated === undefined ? undefined : { name: 'y', text: stated, typed: chunk };
}
