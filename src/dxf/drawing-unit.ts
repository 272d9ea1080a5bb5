/** In which unit a drawing is, by everything that it says of it. */
import { unitNamed } from '../table/unit-name';
import type { Place } from '../errors';
import { InputError } from '../errors';
import type { LengthUnit } from '../units';
import { LENGTH_UNITS, UNIT_WORDS, fromMillimeters, showLength, toMillimeters } from '../units';
import { PIECE_LEAST, PIECE_MOST } from '../tolerance';
import type { DxfEntity } from './entity';
import type { Tag } from './tags';

/** What one place says. */
interface Statement {
  /** Undefined where only metric or not is said. */
  readonly unit: LengthUnit | undefined;
  readonly isMetric: boolean;
  readonly says: string;
  readonly place: Place;
}

/** The unit of a drawing, and where it is said. */
export interface DrawingUnit {
  readonly unit: LengthUnit;
  /**
   * How sure it is: a drawing of our `own`; `named`; `family` for METRIC alone, of which the millimeter
   * is known from a second hand; `table` where only the rule table says it.
   */
  readonly by: 'own' | 'named' | 'family' | 'table';
}

/** Families of units, unverified: METRIC is mm and ENGLISH in. */
const FAMILIES: Readonly<Record<string, LengthUnit | undefined>> = {
  METRIC: 'mm',
  ENGLISH: 'in',
  IMPERIAL: 'in',
};

/** What `unitSaid` knows, for a message. */
export const UNITS_SAID = 'METRIC, ENGLISH or IMPERIAL; or mm, cm or in by their names';

/** The unit of a word in annotations and rule tables; undefined for none. */
export function unitSaid(word: string): LengthUnit | undefined {
  return FAMILIES[word.toUpperCase()] ?? unitNamed(word);
}

/** DXF reference, header variable $INSUNITS: 0 is no unit, and others are none of a pattern. */
const HEADER_UNITS: Readonly<Record<string, LengthUnit | undefined>> = {
  1: 'in',
  4: 'mm',
  5: 'cm',
};

/**
 * The unit on which header, words and rule table agree. Throws InputError `unit-contradicted` where
 * two of them do not, `unit-unknown` for a unit of which there is none here.
 */
export function drawingUnit(
  header: ReadonlyMap<string, Tag>,
  words: readonly DxfEntity[],
  table: { readonly unit: LengthUnit; readonly place: Place },
  file: string,
): DrawingUnit {
  const said = words.flatMap((entity) => wordStatement(entity, file) ?? []);
  const own = [...headerStatements(header, file), ...said];
  const all = [...own, statement(table.unit, `the rule table says ${table.unit}`, table.place)];
  for (const [i, one] of all.entries()) {
    const other = all.slice(0, i).find((before) => disagree(before, one));
    if (other !== undefined) {
      const at = other.place.row === undefined ? '' : ` (row ${other.place.row})`;
      throw new InputError('unit-contradicted', {
        what: 'the unit of the drawing is in doubt',
        allowed: 'one unit in $INSUNITS, $MEASUREMENT, every UNITS and the rule table',
        got: `${other.says}${at}, ${one.says}`,
        place: one.place,
      });
    }
  }
  const named = own.find(({ unit }) => unit !== undefined);
  if (named?.unit === undefined) return { unit: table.unit, by: 'table' };
  if (words.some((entity) => OWN.test(entity.words))) return { unit: named.unit, by: 'own' };
  const isNamed = own.some(({ unit, says }) => unit !== undefined && !FAMILY.test(says));
  return { unit: named.unit, by: isNamed ? 'named' : 'family' };
}

const FAMILY = /METRIC|ENGLISH|IMPERIAL/u;

function disagree(one: Statement, other: Statement): boolean {
  if (one.isMetric !== other.isMetric) return true;
  return one.unit !== undefined && other.unit !== undefined && one.unit !== other.unit;
}

function statement(unit: LengthUnit, says: string, place: Place): Statement {
  return { unit, isMetric: unit !== 'in', says, place };
}

function headerStatements(header: ReadonlyMap<string, Tag>, file: string): readonly Statement[] {
  const statements: Statement[] = [];
  const inserted = header.get('$INSUNITS');
  if (inserted !== undefined && Number(inserted.value) !== 0) {
    const place = { file, row: inserted.row + 1 };
    const unit = HEADER_UNITS[String(Number(inserted.value))];
    if (unit === undefined) {
      throw new InputError('unit-unknown', {
        what: 'the drawing is in a unit that patterns are not drawn in',
        allowed: '$INSUNITS 1 for inches, 4 for millimeters, 5 for centimeters',
        got: `$INSUNITS ${inserted.value}${inserted.value === '6' ? ', which is meters' : ''}`,
        place,
      });
    }
    statements.push(statement(unit, `$INSUNITS ${inserted.value} says ${unit}`, place));
  }
  const measured = header.get('$MEASUREMENT');
  if (measured !== undefined && /^[01]$/u.test(measured.value)) {
    const isMetric = measured.value === '1';
    const says = `$MEASUREMENT ${measured.value} says ${isMetric ? 'metric' : 'not metric'}`;
    statements.push({ unit: undefined, isMetric, says, place: { file, row: measured.row + 1 } });
  }
  return statements;
}

function wordStatement({ words, row }: DxfEntity, file: string): Statement | undefined {
  const name = (UNITS.exec(words) ?? OWN.exec(words))?.[1]?.trim();
  if (name === undefined) return undefined;
  const unit = unitSaid(name);
  const place = { file, row };
  if (unit !== undefined)
    return statement(unit, `UNITS: ${name.toUpperCase()} says ${unit}`, place);
  throw new InputError('unit-unknown', {
    what: 'the unit is not known',
    allowed: UNITS_SAID,
    got: name,
    place,
  });
}

/** What the engine's own drawings say besides, since METRIC alone leaves the unit in doubt. */
const OWN = /^ASTM D6673, UNVERIFIED, IN (MILLIMETERS)$/u;

/** Words that state a unit. */
export const UNITS = /^\s*UNITS?(?:\s*[:=]\s*|\s+)(\S.*)$/iu;

/**
 * Refuses a piece out of all proportion, `largest` being its longer side in mm. Throws InputError
 * `unit-contradicted` with what the piece is in every unit.
 */
export function refuseOdd(largest: number, piece: string, unit: LengthUnit, place: Place): void {
  if (isLikely(largest)) return;
  throw new InputError('unit-contradicted', {
    what: `the piece ${piece} is out of all proportion`,
    allowed: `a longer side of ${showLength(PIECE_LEAST, CM)} to ${showLength(PIECE_MOST, CM)}`,
    got: `read in ${UNIT_WORDS[unit]} ${readings(largest, unit)}`,
    place,
  });
}

/**
 * Refuses a drawing that does not say its unit, unless in any other than the rule table's its
 * largest piece is out of proportion. Throws InputError `unit-missing`.
 */
export function refuseUnsaid(largest: number, unit: LengthUnit, file: string): void {
  const others = LENGTH_UNITS.filter((other) => other !== unit);
  if (others.every((other) => !isLikely(inUnit(largest, unit, other)))) return;
  throw new InputError('unit-missing', {
    what: 'the drawing does not say in which unit it is',
    allowed: 'a $INSUNITS of 1, 4 or 5 in its header, or words on its sheet such as UNITS: METRIC',
    got: `its largest piece is in ${UNIT_WORDS[unit]} ${readings(largest, unit)}`,
    place: { file },
  });
}

const CM = { unit: 'cm', fractions: false } as const;

function isLikely(mm: number): boolean {
  return mm >= PIECE_LEAST && mm <= PIECE_MOST;
}

/** mm of what would be `mm` in one unit if it is in another. */
function inUnit(mm: number, unit: LengthUnit, other: LengthUnit): number {
  return toMillimeters(fromMillimeters(mm, unit), other);
}

/** `7 cm long, in inches 177.8 cm, in centimeters 70 cm`, from the reading in `unit`. */
export function readings(mm: number, unit: LengthUnit): string {
  const cm = (own: LengthUnit): string => showLength(inUnit(mm, unit, own), CM);
  const others = LENGTH_UNITS.filter((other) => other !== unit);
  return [`${cm(unit)} long`, ...others.map((own) => `in ${UNIT_WORDS[own]} ${cm(own)}`)].join(
    ', ',
  );
}
