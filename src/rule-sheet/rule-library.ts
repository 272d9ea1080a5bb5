/** Named rules in a file of their own, which the rule sheets of several styles use. */
import { InputError } from '../errors';
import { matchSize } from '../table/name-match';
import { statedBy, statedDown } from '../table/statements';
import type { Statements } from '../table/statements';
import { unreadIn } from '../table/unread';
import type { UnreadText } from '../table/unread';
import type { LengthUnit } from '../units';
import { readRuleSheet } from './read-rule-sheet';
import type { RuleSheet } from './rule-sheet';
import { sizeList } from './size-list';

/** The rules of a library, and what a sheet that uses them has to agree with. */
export interface RuleLibrary {
  readonly named: RuleSheet['named'];
  /** The sizes that it states or lists; undefined where its rules are steps for all sizes alone. */
  readonly sizes: readonly string[] | undefined;
  /** The base that it states. */
  readonly base: string | undefined;
  /** 1 where it counts y down, else -1. */
  readonly down: 1 | -1;
  readonly unread: readonly UnreadText[];
}

/** What is known beside a library. */
export interface LibraryAbout {
  /** Unit of a library that states none. */
  readonly unit: LengthUnit;
  readonly sizes: readonly string[] | undefined;
  readonly base: string | undefined;
}

/**
 * Reads a library: a rule sheet of which every row has the name of a rule and no point. Throws InputError
 * `sheet-malformed` for a row with a point, and what `readRuleSheet` throws.
 */
export function readLibrary(text: string, file: string, about: LibraryAbout): RuleLibrary {
  const sheet = readRuleSheet(text, file, about);
  const [point] = sheet.cells;
  if (point !== undefined) {
    throw new InputError('sheet-malformed', {
      what: 'a library of rules has a rule of a point',
      allowed: 'rows with the name of a rule and no point; points stand in the rule sheet',
      got: `${point.piece}.${point.point}`,
      place: point.places.point,
    });
  }
  const base = about.base ?? statedBy(sheet, 'base')?.text;
  return {
    named: sheet.named,
    sizes: sizesOf(sheet, base),
    base: statedBy(sheet, 'base')?.text,
    down: statedDown(sheet),
    unread: unreadIn(sheet, ['base', 'sizes', 'y', 'blank']),
  };
}

/** With the base among them, which has no rows of its own. */
function sizesOf(sheet: RuleSheet, base: string | undefined): RuleLibrary['sizes'] {
  const isSized = [...sheet.named.values()].flat().some(({ size }) => size !== '');
  if (!sheet.sizesKnown && !isSized) return undefined;
  return base === undefined ? sheet.sizes : sizeList(sheet, base).labels;
}

/** Throws InputError `rule-contradicted` where a sheet counts y, or from a base, otherwise than its library. */
export function refuseOtherCount(
  sheet: Statements,
  { down, base: own }: RuleLibrary,
  base: string | undefined,
): void {
  if (own !== undefined && base !== undefined && matchSize(base, [own]) === undefined) {
    throw new InputError('rule-contradicted', {
      what: 'the library counts from another base size than the rule sheet',
      allowed: own,
      got: base,
      place: statedBy(sheet, 'base')?.place ?? { file: sheet.file },
    });
  }
  if (statedDown(sheet) === down) return;
  const way = down === 1 ? 'down' : 'up';
  throw new InputError('rule-contradicted', {
    what: 'the rule sheet and the library count y in opposite ways',
    allowed: `a line "# y: ${way}" in the rule sheet, as the library counts`,
    got: statedBy(sheet, 'y')?.typed ?? 'no line, which is down',
    place: statedBy(sheet, 'y')?.place ?? { file: sheet.file },
  });
}
