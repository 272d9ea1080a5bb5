/** `skirtgrade infer`: the body increments behind a rule sheet. */
import { readStyle } from '../draft/style-file';
import { inferIncrements } from '../infer/infer-increments';
import type { LengthUnit } from '../units';
import { inferReport } from './infer-report';
import type { Io } from './io';
import type { ExitCode } from './main';
import { settingsOf } from './settings';

export interface InferCommandOptions {
  readonly base?: string;
  readonly style: string;
  readonly set: readonly string[];
  readonly zero?: string;
  readonly unit?: LengthUnit;
  readonly fractions?: boolean;
}

export function inferCommand(
  file: string,
  { style, set, unit, fractions, ...options }: InferCommandOptions,
  io: Io,
): ExitCode {
  const inference = inferIncrements({
    ...options,
    sheet: io.readText(file),
    file,
    style: /\.csv$/i.test(style) ? readStyle(io.readText(style), style) : style,
    set: settingsOf(set),
  });
  io.out(
    inferReport(inference, { unit: unit ?? inference.sheet.unit, fractions: fractions ?? false }),
  );
  return 0;
}
