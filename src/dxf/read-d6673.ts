/** A pattern for exchange after ASTM D6673, unverified: blocks and rule table back to a pattern. */
import { InputError } from '../errors';
import { scale } from '../geometry/point';
import type { Pattern } from '../pattern/pattern';
import { assembled } from '../given/read-pattern';
import type { GivenRule, GivenRules } from '../rule-sheet/point-rules';
import { toMillimeters } from '../units';
import type { DxfEntity } from './read';
import { distinct } from './document';
import { readDxf } from './read';
import { readBlock } from './read-block';
import { readRuleTable } from './rule-table';
import { readSeamWords } from './seam-words';

/** What a drawing and its rule table say together, as a pattern sheet and a rule sheet would. */
export interface Exchanged {
  readonly pattern: Pattern;
  readonly rules: GivenRules;
}

interface Source {
  readonly text: string;
  readonly file: string;
}

/**
 * Reads a pattern and its rules. Points have no names in such a file and are numbered; what is sewn to
 * what is told in words of our own, if at all. Throws
 * InputError `dxf-malformed`, `rule-unknown` or `rule-table-malformed` with file and row.
 */
export function readD6673(drawing: Source, table: Source): Exchanged {
  const { blocks, entities, passedOver } = readDxf(drawing.text, drawing.file);
  const { rules, sizes, sample, unit } = readRuleTable(table.text, table.file);
  const stated = entities.map(({ words }) => /^UNITS:\s*(METRIC|ENGLISH)/iu.exec(words)?.[1]);
  const drawn = stated.find((found) => found !== undefined)?.toUpperCase();
  const own = drawn === undefined ? unit : drawn === 'METRIC' ? 'mm' : 'in';
  const factor = toMillimeters(1, own);
  if (blocks.length === 0) {
    throw new InputError('dxf-malformed', {
      what: 'the drawing has no blocks',
      allowed: 'one block for each piece',
      place: { file: drawing.file },
    });
  }
  const base = sizes.indexOf(sample);
  const read = blocks.map(({ name, entities: inside }) =>
    readBlock(
      name,
      inside.map((entity) => scaled(entity, factor)),
      drawing.file,
    ),
  );
  const title = entities
    .map(({ words }) => /^STYLE NAME:\s*(.+)$/iu.exec(words)?.[1])
    .find((found) => found !== undefined);
  const names = distinct(read.map(({ piece }) => piece.name));
  const { pieces, unpaired } = assembled(
    read.map(({ piece }, p) => ({ ...piece, name: names[p] ?? piece.name })),
  );
  const plans = pieces.map(({ base: { plan } }) => plan);
  const pattern: Pattern = {
    pieces,
    seams: entities.flatMap(
      ({ words, row }) => readSeamWords(words, plans, { file: drawing.file, row }) ?? [],
    ),
    unpaired,
    file: drawing.file,
    title,
    unit: own === 'mm' ? 'cm' : own,
    base: sample,
    leftOut: [
      ...[...passedOver].map(([kind, count]) => `${count} ${kind}`),
      ...read.flatMap(({ piece: { name }, leftOut }) =>
        leftOut.map((what) => `${what} of ${name}`),
      ),
    ],
  };
  const ruled = pattern.pieces.map(({ base: { plan } }, p) => {
    const found = new Map<number, GivenRule>();
    for (const [name, number] of read[p]?.numbers ?? []) {
      const moves = rules.get(number.rule);
      if (moves === undefined) {
        throw new InputError('rule-unknown', {
          what: `the rule table has no rule ${number.rule}`,
          allowed: [...rules.keys()].join(', '),
          got: `# ${number.rule}`,
          place: { file: drawing.file, row: number.row },
        });
      }
      const text = { x: `rule ${number.rule}`, y: `rule ${number.rule}` };
      const place = { file: drawing.file, row: number.row };
      found.set(plan.index.get(name) ?? -1, { moves, text, place });
    }
    return found;
  });
  return { pattern, rules: { file: table.file, sizes, base, ruled } };
}

function scaled(entity: DxfEntity, factor: number): DxfEntity {
  return { ...entity, points: entity.points.map((at) => scale(at, factor)) };
}
