/** Pieces longer than a body is high below its waist: their numbers most likely are of another unit. */
import { segmentsBounds } from '../geometry/bounds';
import type { GradedPattern } from '../grade/graded-pattern';
import type { Pattern } from '../pattern/pattern';
import { outlineSegments } from '../pattern/piece';
import type { LengthDisplay, LengthUnit } from '../units';
import { UNIT_WORDS, fromMillimeters, showLength, toMillimeters } from '../units';
import type { Finding } from './finding';

/** mm. The waist of a body of 190 cm is some 120 cm above the floor: from memory. */
const LONGEST = 1_300;
/** mm. No piece but a train is longer: from the nape to the floor it is some 155 cm on that body, from memory. */
const LONGEST_WITHOUT_TRAIN = 1_600;

/** What somebody has written where the numbers are too large for the unit. */
const MEANT: Readonly<Record<LengthUnit, LengthUnit | undefined>> = {
  in: 'cm',
  cm: 'mm',
  mm: undefined,
};

/** What is longer than that in the base size: a coat may be, so it is a warning until only a train is. */
export function checkPatternSize(
  { unit, file }: Pattern,
  { sizes, rules }: Pick<GradedPattern, 'sizes' | 'rules'>,
  display: LengthDisplay,
): Finding[] {
  const long = (sizes[rules.base]?.pieces ?? []).flatMap((piece) => {
    const { top, bottom } = segmentsBounds(outlineSegments(piece));
    return bottom - top > LONGEST ? [{ name: piece.plan.name, length: bottom - top }] : [];
  });
  const [first] = long.toSorted((a, b) => b.length - a.length);
  if (first === undefined) return [];
  const meant = MEANT[unit];
  const instead =
    meant === undefined
      ? ''
      : `; if its numbers are ${UNIT_WORDS[meant]}, the unit of the file is wrong, and it is ` +
        showLength(toMillimeters(fromMillimeters(first.length, unit), meant), display);
  return [
    {
      severity: first.length > LONGEST_WITHOUT_TRAIN ? 'fail' : 'warning',
      check: 'pattern-size',
      size: '',
      piece: long.map(({ name }) => name).join(', '),
      subject: file,
      quantity: 'length',
      measured: first.length,
      expected: LONGEST,
      source: 'from memory: the waist of a body of 190 cm is some 120 cm above the floor',
      message:
        `${first.name} is ${showLength(first.length, display)} long, longer than from a waist to the ` +
        `floor${instead}`,
    },
  ];
}
