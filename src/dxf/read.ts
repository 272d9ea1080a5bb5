/** A DXF file as blocks of simple entities. */
import { InputError } from '../errors';
import type { Point } from '../geometry/point';
import { point } from '../geometry/point';

/** A line, place or text of a drawing. */
export interface DxfEntity {
  readonly type: 'LINE' | 'POLYLINE' | 'POINT' | 'TEXT';
  readonly layer: string;
  /** In the unit of the file, y down. */
  readonly points: readonly Point[];
  readonly closed: boolean;
  /** What a TEXT says; empty for the others. */
  readonly words: string;
  /** Row in the file, from 1. */
  readonly row: number;
}

/** A drawing as far as patterns need it. */
export interface DxfContent {
  readonly blocks: readonly { readonly name: string; readonly entities: readonly DxfEntity[] }[];
  /** Those outside all blocks. */
  readonly entities: readonly DxfEntity[];
  /** Kinds of entities that were passed over, with their number. */
  readonly passedOver: ReadonlyMap<string, number>;
}

interface Tag {
  readonly code: number;
  readonly value: string;
  readonly row: number;
}

/** An entity as its tags, with those of the vertices that follow it. */
interface Raw {
  readonly type: string;
  readonly tags: readonly Tag[];
  readonly vertices: Raw[];
}

/**
 * Reads the blocks and entities of an ASCII DXF file. Throws InputError `dxf-malformed` with the row
 * at which it stops making sense.
 */
export function readDxf(text: string, file: string): DxfContent {
  const raws = rawEntities(tagsOf(text, file));
  const passedOver = new Map<string, number>();
  const blocks: { name: string; entities: DxfEntity[] }[] = [];
  const entities: DxfEntity[] = [];
  let section = '';
  let block: (typeof blocks)[number] | undefined;
  for (const raw of raws) {
    if (raw.type === 'SECTION') section = first(raw, 2);
    else if (raw.type === 'BLOCK') {
      block = { name: first(raw, 2), entities: [] };
      blocks.push(block);
    } else if (raw.type === 'ENDBLK') block = undefined;
    else if (section === 'BLOCKS' || section === 'ENTITIES') {
      const entity = entityOf(raw, file);
      const arcs = [raw, ...raw.vertices].filter(isBulged).length;
      if (arcs > 0) passedOver.set(ARC, (passedOver.get(ARC) ?? 0) + arcs);
      if (entity !== undefined) (block?.entities ?? entities).push(entity);
      else if (!STRUCTURE.has(raw.type)) {
        passedOver.set(raw.type, (passedOver.get(raw.type) ?? 0) + 1);
      }
    }
  }
  return { blocks: blocks.filter(({ name }) => !/^[*$]/u.test(name)), entities, passedOver };
}

/** Arcs between the vertices of a polyline; it is read as if it were straight there. */
const ARC = 'ARC IN POLYLINE';

function isBulged({ type, tags }: Raw): boolean {
  if (type !== 'VERTEX' && type !== 'LWPOLYLINE') return false;
  return tags.some(({ code, value }) => code === 42 && Number(value) !== 0);
}

const STRUCTURE: ReadonlySet<string> = new Set(['ENDSEC', 'EOF', 'INSERT', 'SEQEND', 'ATTRIB']);

function tagsOf(text: string, file: string): readonly Tag[] {
  const lines = text.split(/\r\n|\r|\n/u);
  while (lines.at(-1)?.trim() === '') lines.pop();
  const tags: Tag[] = [];
  for (let i = 0; i + 1 < lines.length; i += 2) {
    const code = Number(lines[i]);
    if (!/^\s*\d+\s*$/u.test(lines[i] ?? '')) refuse(file, i + 1, lines[i] ?? '');
    tags.push({ code, value: (lines[i + 1] ?? '').trim(), row: i + 1 });
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

function rawEntities(tags: readonly Tag[]): readonly Raw[] {
  const raws: { type: string; tags: Tag[]; vertices: Raw[] }[] = [];
  for (const tag of tags) {
    if (tag.code === 0) raws.push({ type: tag.value, tags: [tag], vertices: [] });
    else raws.at(-1)?.tags.push(tag);
  }
  const whole: Raw[] = [];
  let line: Raw | undefined;
  for (const raw of raws) {
    if (raw.type === 'VERTEX') line?.vertices.push(raw);
    else {
      line = raw.type === 'POLYLINE' ? raw : undefined;
      whole.push(raw);
    }
  }
  return whole;
}

function first({ tags }: Raw, code: number): string {
  return tags.find((tag) => tag.code === code)?.value ?? '';
}

function entityOf(raw: Raw, file: string): DxfEntity | undefined {
  const common = {
    layer: first(raw, 8),
    closed: (Number(first(raw, 70) || 0) & 1) === 1,
    words: unescaped(first(raw, 1)),
    row: raw.tags[0]?.row ?? 1,
  };
  switch (raw.type) {
    case 'LINE':
      return {
        ...common,
        type: 'LINE',
        points: [...placesOf(raw, 10, file), ...placesOf(raw, 11, file)],
      };
    case 'POINT':
      return { ...common, type: 'POINT', points: placesOf(raw, 10, file) };
    case 'TEXT':
    case 'MTEXT':
      return { ...common, type: 'TEXT', points: placesOf(raw, 10, file).slice(0, 1) };
    case 'LWPOLYLINE':
      return { ...common, type: 'POLYLINE', points: placesOf(raw, 10, file) };
    case 'POLYLINE':
      return {
        ...common,
        type: 'POLYLINE',
        points: raw.vertices.flatMap((vertex) => placesOf(vertex, 10, file)),
      };
    default:
      return undefined;
  }
}

/** Every x under `code` with the y that follows it. */
function placesOf({ tags }: Raw, code: number, file: string): readonly Point[] {
  return tags.flatMap((tag, i) => {
    if (tag.code !== code) return [];
    const y = tags.slice(i + 1).find((other) => other.code === code + 10);
    return [point(coordinate(tag, file), -coordinate(y ?? { ...tag, value: '' }, file) + 0)];
  });
}

function coordinate({ value, row }: Tag, file: string): number {
  const number = value === '' ? NaN : Number(value);
  if (Number.isFinite(number)) return number;
  throw new InputError('dxf-malformed', {
    what: 'a coordinate is no number',
    allowed: 'a number such as -12.5 for x and for y',
    got: value,
    place: { file, row: row + 1 },
  });
}

function unescaped(words: string): string {
  return words.replace(/\\U\+([0-9A-F]{4})/giu, (_, code: string) =>
    String.fromCharCode(parseInt(code, 16)),
  );
}
