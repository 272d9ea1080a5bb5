/** `skirtgrade assess`: a student's rule sheet, cell by cell. */
import { displayAsTyped, hasFractions } from '../table/typed-fractions';
import { HINT_LEVELS } from '../study/mark/hint-levels';
import { isRight, markSheet } from '../study/mark/mark-sheet';
import type { LengthUnit } from '../units';
import type { ExitCode, Io } from './io';
import { assessFacts } from './assess-facts';
import { hintFacts, hintReport } from './assess-hint';
import { assessBrief, assessReport } from './assess-report';
import type { Telling } from './json-document';
import { tell } from './json-document';
import { readNamed } from './read-named';
import type { StyleOptions } from './style-request';
import { inStyle, styleRequest } from './style-request';

/** The options of `assess` as commander reads them. */
export interface AssessCommandOptions extends StyleOptions, Telling {
  readonly base?: string;
  readonly tolerance?: string;
  readonly zero?: string;
  readonly pieces?: readonly string[];
  readonly points?: readonly string[];
  readonly answered?: boolean;
  /** As typed: one of the levels, `4` for the answer. */
  readonly hint?: string;
  /** Of the report; the sheet's if absent. */
  readonly unit?: LengthUnit;
  readonly fractions?: boolean;
}

/**
 * Prints the assessment. Gives 0 if every cell is right, otherwise 1; throws InputError for a chart or a
 * sheet that cannot be used.
 */
export function assessCommand(
  file: string,
  sheetFile: string,
  {
    style,
    set,
    project,
    unit,
    fractions,
    hint,
    json,
    verbose,
    quiet,
    ...options
  }: AssessCommandOptions,
  io: Io,
): ExitCode {
  const chart = readNamed(io, file);
  const sheet = readNamed(io, sheetFile);
  const marking = inStyle(style, () =>
    markSheet({
      ...options,
      chart: chart.text,
      file: chart.file,
      sheet: sheet.text,
      sheetFile: sheet.file,
      ...styleRequest({ style, set, project }, io),
    }),
  );
  const level = HINT_LEVELS.find((one) => String(one) === hint);
  const typed = hasFractions(sheet.text);
  const display = displayAsTyped({ unit, fractions }, marking.sheet.unit, typed);
  return tell(
    io,
    'assess',
    { json, quiet },
    {
      exitCode: isRight(marking) ? 0 : 1,
      brief: () => assessBrief(marking),
      ...(level === undefined || level === 4
        ? {
            words: () => assessReport(marking, display, verbose),
            facts: () => assessFacts(marking),
          }
        : { words: () => hintReport(marking, level), facts: () => hintFacts(marking, level) }),
    },
  );
}
