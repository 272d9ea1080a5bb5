/** `skirtgrade infer`: the body increments behind a rule sheet. */
import { displayAsTyped, hasFractions } from '../table/typed-fractions';
import { inferIncrements } from '../study/infer/infer-increments';
import type { LengthUnit } from '../units';
import { inferFacts } from './infer-facts';
import { inferReport, isContradictory } from './infer-report';
import type { ExitCode, Io } from './io';
import type { Telling } from './json-document';
import { tell } from './json-document';
import { readNamed } from './read-named';
import type { StyleOptions } from './style-request';
import { inStyle, styleRequest } from './style-request';

/** The options of `infer` as commander reads them. */
export interface InferCommandOptions extends StyleOptions, Telling {
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
  { style, set, project, unit, fractions, json, ...options }: InferCommandOptions,
  io: Io,
): ExitCode {
  const sheet = readNamed(io, file);
  const inference = inStyle(style, () =>
    inferIncrements({
      ...options,
      sheet: sheet.text,
      file: sheet.file,
      ...styleRequest({ style, set, project }, io),
    }),
  );
  const typed = hasFractions(sheet.text);
  const display = displayAsTyped({ unit, fractions }, inference.sheet.unit, typed);
  return tell(
    io,
    'infer',
    { json },
    {
      exitCode: isContradictory(inference) ? 1 : 0,
      words: () => inferReport(inference, display),
      facts: () => inferFacts(inference),
    },
  );
}
