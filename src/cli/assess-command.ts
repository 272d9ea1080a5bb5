/** `skirtgrade assess`: a student's rule sheet, cell by cell. */
import { displayAsTyped, hasFractions } from '../table/typed-fractions';
import { HINT_LEVELS } from '../study/mark/hint-levels';
import { isRight, markSheet } from '../study/mark/mark-sheet';
import type { NamedText } from '../jobs/requests';
import type { Marking } from '../study/mark/mark-sheet';
import type { DraftedCase, GivenCase } from '../study/mark/reference';
import type { LengthUnit } from '../units';
import type { ExitCode, Io } from './io';
import { assessFacts } from './assess-facts';
import { hintFacts, hintReport } from './assess-hint';
import { assessBrief, assessReport } from './assess-report';
import type { Telling } from './json-document';
import { tell } from './json-document';
import { readNamed } from './read-named';
import type { StyleOptions } from './style-request';
import { patternRequest } from './grade-request';
import { withoutUndefined } from './without-undefined';
import { inStyle, styleRequest } from './style-request';

/** The options of `assess` as commander reads them. */
export interface AssessCommandOptions extends StyleOptions, Telling {
  readonly base?: string;
  readonly pattern?: string;
  readonly rules?: string;
  readonly chart?: string;
  readonly seams?: string;
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

/** The files of a call: the sheet, and a chart to draft from or a pattern that is there. */
export interface AssessFiles {
  readonly sheet: string;
  /** Of a style; a pattern has its own in the options. */
  readonly chart: string | undefined;
}

/**
 * Prints the assessment. Gives 0 if every cell is right, otherwise 1; throws InputError for a chart, a pattern
 * or a sheet that cannot be used.
 */
export function assessCommand(
  files: AssessFiles,
  { unit, fractions, hint, json, verbose, quiet, ...options }: AssessCommandOptions,
  io: Io,
): ExitCode {
  const reference = caseOf(files.chart, options, io);
  const sheet = readNamed(io, files.sheet);
  const marking = markedBy(reference, options, sheet);
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

/** What the sheets of a call are held against, read once. Throws InputError for files that cannot be read. */
function caseOf(
  chartFile: string | undefined,
  { style, set, project, pattern, rules, chart, seams, base }: AssessCommandOptions,
  io: Io,
): DraftedCase | GivenCase {
  const from = base === undefined ? {} : { base };
  if (pattern !== undefined)
    return patternRequest({ ...withoutUndefined({ rules, chart, seams }), ...from, pattern }, io);
  const { text, file } = readNamed(io, chartFile ?? '');
  return { ...from, chart: text, file, ...styleRequest({ style, set, project }, io) };
}

function markedBy(
  reference: DraftedCase | GivenCase,
  { style, zero, tolerance, pieces, points, answered }: AssessCommandOptions,
  { text, file }: NamedText,
): Marking {
  const judged = withoutUndefined({ zero, tolerance, pieces, points, answered });
  return inStyle(style, () => markSheet({ ...reference, ...judged, sheet: text, sheetFile: file }));
}
