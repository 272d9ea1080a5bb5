/** The increments behind a rule sheet as the values of a document. */
import { notReadFindings } from '../check/not-read';
import type { Inference } from '../study/infer/infer-increments';
import { notReadFacts } from './not-read-line';

/** Increments from the base by size, `null` where the sheet cannot tell, and the cells left out. */
export function inferFacts(inference: Inference): object {
  const { sheet, style, base, measurements, unseen, zeros, upIsTaken, mark, sizes } = inference;
  return {
    sheet: sheet.file,
    style,
    base,
    zeros: Object.fromEntries(zeros),
    y_up_is_taken: upIsTaken,
    rounded_to: mark ?? null,
    cannot_tell: unseen,
    not_read: notReadFacts(notReadFindings(inference.unread)),
    sizes: sizes.map(({ label, increments, within, residual, worst, leftOut }) => ({
      size: label,
      increments: Object.fromEntries(measurements.map((name, i) => [name, increments[i] ?? null])),
      within: Object.fromEntries(
        measurements.map((name, i) => [
          name,
          within?.[i]?.map((mm) => (Number.isFinite(mm) ? mm : null)) ?? null,
        ]),
      ),
      left_over: residual,
      worst,
      left_out: leftOut,
    })),
  };
}
