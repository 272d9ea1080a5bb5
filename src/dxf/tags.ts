/** The text of a DXF file as tags, and the tags as raw entities. */
import { InputError } from '../errors';
import { drawnLines } from '../table/limits';

/** A group code and its value. */
export interface Tag {
  readonly code: number;
  readonly value: string;
  /** Row of its code in the file, from 1. */
  readonly row: number;
}

/** An entity as its tags, with those of the vertices that follow it. */
export interface Raw {
  readonly type: string;
  readonly tags: readonly Tag[];
  readonly vertices: readonly Raw[];
}

/** The raw entities of a file in its order. Throws InputError `dxf-malformed` with a row, or `file-too-large`. */
export function rawEntities(text: string, file: string): readonly Raw[] {
  const raws: { type: string; tags: Tag[]; vertices: Raw[] }[] = [];
  for (const tag of tagsOf(text, file)) {
    if (tag.code === 0) raws.push({ type: tag.value.toUpperCase(), tags: [tag], vertices: [] });
    else raws.at(-1)?.tags.push(tag);
  }
  const whole: Raw[] = [];
  let line: (typeof raws)[number] | undefined;
  for (const raw of raws) {
    if (raw.type === 'VERTEX' && line !== undefined) line.vertices.push(raw);
    else {
      line = raw.type === 'POLYLINE' ? raw : undefined;
      whole.push(raw);
    }
  }
  return whole;
}

/** The first value under a code; empty if there is none. */
export function first({ tags }: Raw, code: number): string {
  return tags.find((tag) => tag.code === code)?.value ?? '';
}

/** The first number under a code. Throws InputError `dxf-malformed` if it is none. */
export function numberAt({ tags }: Raw, code: number, otherwise: number, file: string): number {
  const tag = tags.find((own) => own.code === code);
  return tag === undefined ? otherwise : numberOf(tag, file);
}

/** Every number under a code. */
export function numbersAt({ tags }: Raw, code: number, file: string): readonly number[] {
  return tags.filter((tag) => tag.code === code).map((tag) => numberOf(tag, file));
}

/** Row of the entity in the file. */
export function rowOf({ tags }: Raw): number {
  return tags[0]?.row ?? 1;
}

/**
 * The number of a tag. Throws InputError `dxf-malformed` for what is no number, and beyond `MOST`, since no
 * drawing has that.
 */
export function numberOf({ value, row }: Tag, file: string): number {
  const number = value.trim() === '' ? NaN : Number(value);
  if (Math.abs(number) <= MOST) return number;
  throw new InputError('dxf-malformed', {
    what: 'a coordinate or another figure is no number',
    allowed: 'a number such as -12.5',
    got: value,
    place: { file, row: row + 1 },
  });
}

const MOST = 1e9;

function tagsOf(text: string, file: string): readonly Tag[] {
  const lines = [...drawnLines(text.replace(/^\uFEFF/u, ''), file)];
  while (lines.at(-1)?.trim() === '') lines.pop();
  const tags: Tag[] = [];
  for (let i = 0; i + 1 < lines.length; i += 2) {
    const value = lines[i + 1] ?? '';
    if (!/^\s*\d+\s*$/u.test(lines[i] ?? '')) refuse(file, i + 1, lines[i] ?? '');
    if (value.includes('\uFFFD')) {
      throw new InputError('dxf-malformed', {
        what: 'characters were lost when the file was read as UTF-8',
        allowed: 'text in UTF-8, or the bytes of the file decoded after its $DWGCODEPAGE',
        got: value.slice(0, 40),
        place: { file, row: i + 2 },
      });
    }
    tags.push({ code: Number(lines[i]), value: value.trim(), row: i + 1 });
  }
  const last = tags.at(-1);
  if (last?.value !== 'EOF') refuse(file, Math.max(1, lines.length), last?.value ?? '');
  return tags;
}

function refuse(file: string, row: number, got: string): never {
  throw new InputError('dxf-malformed', {
    what: 'the file is no DXF file as text, or is not complete',
    allowed: 'pairs of lines, a whole number and a value, that end with EOF',
    got: got.slice(0, 40),
    place: { file, row },
  });
}
