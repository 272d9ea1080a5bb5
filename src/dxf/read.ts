/** A DXF file as its header, its blocks, and the entities on the sheet. */
import { InputError } from '../errors';
import type { Point } from '../geometry/point';
import { point } from '../geometry/point';
import type { DxfEntity } from './entity';
import { entityOf } from './entity';
import type { DxfInsert } from './affine-map';
import { insertOf } from './affine-map';
import type { Raw, Tag } from './tags';
import { first, numberAt, rawEntities, rowOf } from './tags';

/** What a block or the sheet holds. */
export interface DxfSpace {
  readonly entities: readonly DxfEntity[];
  readonly inserts: readonly DxfInsert[];
}

/** A block: what it holds under a name. */
export interface DxfBlock extends DxfSpace {
  readonly name: string;
  readonly row: number;
  /** What lies at the place of an insert; in the unit of the file, y down. */
  readonly base: Point;
}

/** A drawing as far as patterns need it: its sheet, its blocks, its header. */
export interface DxfContent extends DxfSpace {
  /** The first tag of each variable by its name, such as `$INSUNITS`. */
  readonly header: ReadonlyMap<string, Tag>;
  readonly blocks: readonly DxfBlock[];
}

/**
 * Reads an ASCII DXF file. Throws InputError `dxf-malformed` with the row at which it stops making
 * sense.
 */
export function readDxf(text: string, file: string): DxfContent {
  const blocks: (DxfBlock & { entities: DxfEntity[]; inserts: DxfInsert[] })[] = [];
  const sheet = { entities: [] as DxfEntity[], inserts: [] as DxfInsert[] };
  let header: ReadonlyMap<string, Tag> = new Map();
  let section = '';
  let block: (typeof blocks)[number] | undefined;
  for (const raw of rawEntities(text, file)) {
    if (raw.type === 'SECTION') {
      section = first(raw, 2).toUpperCase();
      block = undefined;
      if (section === 'HEADER') header = headerOf(raw);
    } else if (section !== 'BLOCKS' && section !== 'ENTITIES') continue;
    else if (raw.type === 'BLOCK') {
      block = { ...blockOf(raw, file), entities: [], inserts: [] };
      blocks.push(block);
    } else if (raw.type === 'ENDBLK') block = undefined;
    else if (raw.type === 'INSERT' && first(raw, 67) !== '1')
      (block ?? sheet).inserts.push(insertOf(raw, file));
    else if (!STRUCTURE.has(raw.type)) (block ?? sheet).entities.push(entityOf(raw, file));
  }
  refuseTwice(blocks, file);
  return { header, blocks, ...sheet };
}

/** What is in an entities section and shows nothing. */
const STRUCTURE: ReadonlySet<string> = new Set(['ENDSEC', 'EOF', 'SEQEND', 'VIEWPORT']);

function headerOf({ tags }: Raw): ReadonlyMap<string, Tag> {
  return new Map(
    tags.flatMap((tag, i) => {
      const value = tags[i + 1];
      return tag.code === 9 && value !== undefined ? [[tag.value.toUpperCase(), value]] : [];
    }),
  );
}

function blockOf(raw: Raw, file: string): Pick<DxfBlock, 'name' | 'row' | 'base'> {
  return {
    name: first(raw, 2),
    row: rowOf(raw),
    base: point(numberAt(raw, 10, 0, file), 0 - numberAt(raw, 20, 0, file)),
  };
}

function refuseTwice(blocks: readonly DxfBlock[], file: string): void {
  const names = blocks.map(({ name }) => name.toUpperCase());
  const twice = blocks.find(({ name }, i) => names.indexOf(name.toUpperCase()) !== i);
  if (twice === undefined) return;
  throw new InputError('dxf-malformed', {
    what: 'two blocks have one name',
    allowed: 'each name once, whether in small or capital letters',
    got: twice.name,
    place: { file, row: twice.row },
  });
}
