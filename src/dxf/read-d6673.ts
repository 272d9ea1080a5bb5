/** A pattern for exchange after ASTM D6673, unverified: blocks and rule table back to a pattern. */
import { InputError } from '../errors';
import { pointBounds } from '../geometry/bounds';
import { point, scale } from '../geometry/point';
import type { Pattern } from '../pattern/pattern';
import type { ReadingNote } from '../pattern/pattern';
import { assembled } from '../given/read-pattern';
import type { GivenRule, GivenRules } from '../rule-sheet/point-rules';
import { PATTERN_LEAST } from '../tolerance';
import { UNIT_WORDS, toMillimeters } from '../units';
import { distinct } from './document';
import type { DrawingUnit } from './drawing-unit';
import { UNITS, drawingUnit, readings, refuseOdd, refuseUnsaid } from './drawing-unit';
import { growingNotes } from './growing-blocks';
import { mapped } from './line-point';
import { besideNotes, cutLineNotes } from './piece-notes';
import type { PlacedBlock } from './placed-blocks';
import { placedBlocks } from './placed-blocks';
import type { DxfEntity } from './entity';
import { readDxf } from './read';
import type { ReadBlock } from './read-block';
import { readBlock } from './read-block';
import type { RuleTable } from './rule-table';
import { readRuleTable, sizeWord } from './rule-table';
import { isSeamWords, readSeamWords } from './seam-words';
import { refuseSized } from './sized-blocks';
import { unreadNotes } from './unread-entities';

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
 * what is told in words of our own, if at all. What is not read, or not as it stands, is in `leftOut`
 * of the pattern. Throws InputError `dxf-malformed`, `unit-missing`, `unit-unknown`,
 * `unit-contradicted`, `rule-unknown` or `rule-table-malformed` with file and row.
 */
export function readD6673(drawing: Source, table: Source): Exchanged {
  const { file } = drawing;
  const content = readDxf(drawing.text, file);
  const ruleTable = readRuleTable(table.text, table.file);
  const { sizes, sample } = ruleTable;
  const { placed, notes } = placedBlocks(content, file);
  if (placed.length === 0) {
    throw new InputError('dxf-malformed', {
      what: 'the drawing has no blocks',
      allowed: 'one block for each piece',
      place: { file },
    });
  }
  const sheet = content.entities;
  const words = [...sheet, ...placed.flatMap(({ entities }) => entities)];
  const place = { file: table.file, row: ruleTable.unitRow };
  const stated = drawingUnit(content.header, words, { unit: ruleTable.unit, place }, file);
  const { unit } = stated;
  refuseSized(placed, ruleTable, file);
  refuseOtherSample(sheet, sample, file);
  const factor = toMillimeters(1, unit);
  const read = placed.map((block) => readBlock(inMillimeters(block, factor), file));
  const doubts = unitDoubts(read, placed, stated, file);
  const names = distinct(read.map(({ piece }) => piece.name));
  const { pieces, unpaired } = assembled(
    read.map(({ piece }, p) => ({ ...piece, name: names[p] ?? piece.name })),
  );
  const plans = pieces.map(({ base: { plan } }) => plan);
  const ruled = plans.map((plan, p) => {
    const rulesOf = placed[p]?.mirrored === true ? mirrored(ruleTable.rules) : ruleTable.rules;
    return ruledPoints(plan.index, read[p]?.numbers ?? new Map(), rulesOf, file);
  });
  const pattern: Pattern = {
    pieces,
    seams: sheet.flatMap(({ words: said, row }) => readSeamWords(said, plans, { file, row }) ?? []),
    unpaired,
    file,
    title: sheet
      .map(({ words: said }) => /^STYLE NAME:\s*(.+)$/iu.exec(said)?.[1])
      .find((found) => found !== undefined),
    ...{ unit: unit === 'mm' ? 'cm' : unit, base: sample, unread: [] },
    leftOut: [
      ...doubts,
      ...notes,
      ...growingNotes(placed, ruleTable),
      ...unreadNotes(
        sheet.filter((entity) => !isKnown(entity)),
        '',
      ),
      ...read.flatMap((own) => own.notes),
      ...pieces.flatMap((piece, p) => [
        ...besideNotes(piece),
        ...cutLineNotes(piece, ruled[p] ?? NO_RULES),
      ]),
    ],
  };
  const base = sizes.indexOf(sample);
  return { pattern, rules: { file: table.file, typed: true, sizes, base, ruled, unread: [] } };
}

const NO_RULES: ReadonlyMap<number, GivenRule> = new Map();

function inMillimeters(block: PlacedBlock, factor: number): PlacedBlock {
  const { entities, turned } = block;
  return { ...block, entities: entities.map((own) => scaled(own, factor)), turned };
}

function scaled(entity: DxfEntity, factor: number): DxfEntity {
  const { points, center } = entity;
  return {
    ...entity,
    points: mapped(points, (at) => scale(at, factor)),
    ...(center && { center: scale(center, factor) }),
  };
}

/** Words on the sheet that are read, or that say nothing of the shape. */
const SHEET = [UNITS, /^(STYLE NAME|SAMPLE SIZE):/iu, /^ASTM D6673\b/iu];

function isKnown({ type, words }: DxfEntity): boolean {
  return type === 'TEXT' && (isSeamWords(words) || SHEET.some((known) => known.test(words)));
}

function refuseOtherSample(sheet: readonly DxfEntity[], sample: string, file: string): void {
  for (const { words, row } of sheet) {
    const said = /^SAMPLE SIZE:\s*(.+)$/iu.exec(words)?.[1]?.trim();
    if (said === undefined || sizeWord(said) === sizeWord(sample)) continue;
    throw new InputError('dxf-malformed', {
      what: 'drawing and rule table have two sample sizes',
      allowed: `the one that the rule table counts from, ${sample}`,
      got: said,
      place: { file, row },
    });
  }
}

/**
 * Refuses pieces out of proportion. A pattern that is small for its unit is read with a warning, and
 * fails where the unit is not told by its name.
 */
function unitDoubts(
  read: readonly ReadBlock[],
  placed: readonly PlacedBlock[],
  { unit, by }: DrawingUnit,
  file: string,
): readonly ReadingNote[] {
  const sides = read.map(({ piece }) => {
    const { left, right, top, bottom } = pointBounds(piece.points.flatMap(onOutline));
    return Math.max(right - left, bottom - top);
  });
  const largest = Math.max(...sides);
  if (by === 'table') refuseUnsaid(largest, unit, file);
  read.forEach(({ piece }, p) => {
    refuseOdd(sides[p] ?? 0, piece.name, unit, { file, row: placed[p]?.row ?? 1 });
  });
  if (by === 'own' || largest >= PATTERN_LEAST) return [];
  return [
    {
      severity: by === 'named' ? 'warning' : 'fail',
      check: 'unit-doubt',
      piece: '',
      what:
        `the unit is taken for ${UNIT_WORDS[unit]}, and so the largest piece is ` +
        `${readings(largest, unit)}` +
        (by === 'named' ? '' : '; say the unit by its name in UNITS or $INSUNITS'),
    },
  ];
}

function onOutline({ kind, at }: ReadBlock['piece']['points'][number]) {
  return OUTLINE.has(kind) ? [at] : [];
}

const OUTLINE: ReadonlySet<string> = new Set(['corner', 'curve', 'notch', 'dart', 'handle']);

/** Rules in the axes of a piece that lies turned over: its second axis points the other way. */
function mirrored(rules: RuleTable['rules']): RuleTable['rules'] {
  return new Map(
    [...rules].map(([number, moves]) => [number, moves.map(({ x, y }) => point(x, 0 - y))]),
  );
}

function ruledPoints(
  index: ReadonlyMap<string, number>,
  numbers: ReadBlock['numbers'],
  rules: RuleTable['rules'],
  file: string,
): ReadonlyMap<number, GivenRule> {
  const found = new Map<number, GivenRule>();
  for (const [name, number] of numbers) {
    const moves = rules.get(number.rule);
    const place = { file, row: number.row };
    if (moves === undefined) {
      throw new InputError('rule-unknown', {
        what: `the rule table has no rule ${number.rule}`,
        allowed: [...rules.keys()].join(', '),
        got: `# ${number.rule}`,
        place,
      });
    }
    const own = index.get(name);
    const text = { x: `rule ${number.rule}`, y: `rule ${number.rule}` };
    // The reference line is no part of the piece, though it may have rules.
    if (own !== undefined) found.set(own, { moves, text, place });
  }
  return found;
}
