/** In words and figures, what a sheet would do to the garment. */
import { measureOf } from '../grade/graded-pattern';
import { panelGirths } from '../measure/skirt-points';
import { seamGaps } from '../study/mark/seam-gaps';
import type { WornSize } from '../study/mark/worn-sheet';
import { MEETS_TARGET } from '../tolerance';
import type { LengthDisplay } from '../units';
import { UNIT_WORDS, showLength, showNumber } from '../units';
import { wrappedParagraph, textTable } from './text-table';

/**
 * Measured from the base size with the moves of the sheet; `open` names what was not judged and is taken as
 * right, such as `blanks`.
 */
export function garmentReport(
  worn: readonly WornSize[],
  display: LengthDisplay,
  open: string | undefined,
): string {
  const hasBlanks = open !== undefined;
  const taken = worn[0]?.right ?? [];
  // A pattern that declares no girths has none to tell.
  const girths = panelGirths(taken).filter((girth) => taken.some(({ name }) => name === girth));
  const show = (mm: number): string => (Number.isFinite(mm) ? showNumber(mm, display) : '-');
  const rows = worn.map(({ label, right, sheet }) => [
    label,
    ...girths.flatMap((girth) => {
      const [own, made] = [
        measureOf({ measures: right }, girth),
        measureOf({ measures: sheet }, girth),
      ];
      return [show(made), show(own), show(made - own)];
    }),
  ]);
  const header = ['size', 'waist', 'right', 'off', 'hip', 'right', 'off'];
  return (
    `The garment that this sheet makes, in ${UNIT_WORDS[display.unit]}` +
    `${hasBlanks ? `, ${open} taken as right` : ''}\n` +
    (girths.length === 0 ? '' : textTable([header, ...rows])) +
    [
      ...girths.map((girth) => girthWords(worn, girth, display, hasBlanks)),
      ...seamWords(worn, display, hasBlanks),
    ].join('')
  );
}

function girthWords(
  worn: readonly WornSize[],
  measure: string,
  display: LengthDisplay,
  hasBlanks: boolean,
): string {
  const girth = measure.replaceAll('_', ' ');
  const offs = worn
    .map(({ label, right, sheet }) => ({
      label,
      off: measureOf({ measures: sheet }, measure) - measureOf({ measures: right }, measure),
    }))
    .filter(({ off }) => !(Math.abs(off) <= MEETS_TARGET));
  if (offs.length === 0)
    return wrappedParagraph(
      hasBlanks
        ? `Nothing that is given sets the finished ${girth} off.`
        : `The finished ${girth} is right in every size.`,
    );
  const worst = offs.reduce((a, b) => (Math.abs(b.off) > Math.abs(a.off) ? b : a));
  if (!Number.isFinite(worst.off))
    return wrappedParagraph(`The finished ${girth} cannot be measured: the outline falls apart.`);
  return wrappedParagraph(
    `The finished ${girth} is off in ${offs.map(({ label }) => label).join(', ')}: at worst ` +
      `${showLength(Math.abs(worst.off), display)} too ${worst.off > 0 ? 'wide' : 'narrow'}, ` +
      `in ${worst.label}.`,
  );
}

function seamWords(
  worn: readonly WornSize[],
  display: LengthDisplay,
  hasBlanks: boolean,
): readonly string[] {
  const gaps = seamGaps(worn);
  if (gaps.length === 0)
    return [
      wrappedParagraph(
        hasBlanks
          ? 'Nothing that is given sets side seams or dart legs apart.'
          : 'Side seams and dart legs still match in every size.',
      ),
    ];
  return gaps.map(({ words, sizes }) => {
    const parts = sizes.map(
      ({ label, gap }) => `${showLength(Math.abs(gap), display)} apart in ${label}`,
    );
    return wrappedParagraph(`The ${words} no longer match: ${parts.join(', ')}.`, 2);
  });
}
