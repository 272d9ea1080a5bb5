/** `skirtgrade infer`: the body increments behind a rule sheet. */
import { inferIncrements } from '../study/infer/infer-increments';
import type { LengthUnit } from '../units';
import { inferReport, isContradictory } from './infer-report';
import type { ExitCode, Io } from './io';
import type { StyleOptions } from './style-request';
import { styleRequest } from './style-request';

/** The options of `infer` as commander reads them. */
export interface InferCommandOptions extends StyleOptions {
  readonly base?: string;
  readonly zero?: string;
  /** Of the report; the sheet's if absent. */
  readonly unit?: LengthUnit;
  readonly fractions?: boolean;
}

/**
 * Prints what the sheet implies. Gives 1 if its cells contradict one another, otherwise 0. Throws InputError for
 * a sheet that cannot be used.
 */
export function inferCommand(
  file: string,
  { style, set, unit, fractions, ...options }: InferCommandOptions,
  io: Io,
): ExitCode {
  const inference = inferIncrements({
    ...options,
    sheet: io.readText(file),
    file,
    ...styleRequest({ style, set }, io),
  });
  io.out(
    inferReport(inference, { unit: unit ?? inference.sheet.unit, fractions: fractions ?? false }),
  );
  return isContradictory(inference) ? 1 : 0;
}
