/** `skirtgrade assess`: a student's rule sheet, cell by cell, or the sheets of a class. */
import { InputError } from '../errors';
import { HINT_LEVELS } from '../study/mark/hint-levels';
import { isRight, markSheet } from '../study/mark/mark-sheet';
import { displayAsTyped, hasFractions } from '../table/typed-fractions';
import type { AssessCommandOptions, AssessFiles } from './assess-case';
import { classRequest } from './assess-case';
import { assessClass } from './assess-class';
import { assessFacts } from './assess-facts';
import { hintFacts, hintReport } from './assess-hint';
import { assessBrief, assessReport } from './assess-report';
import type { ExitCode, Io } from './io';
import { tell } from './json-document';
import { readNamed } from './read-named';
import { inStyle } from './style-request';

/**
 * Prints the assessment. Gives 0 if every cell is right, otherwise 1; throws InputError for a chart, a pattern
 * or a sheet that cannot be used, and what writing throws for a folder of sheets.
 */
export async function assessCommand(
  files: AssessFiles,
  options: AssessCommandOptions,
  io: Io,
): Promise<ExitCode> {
  const request = classRequest(files, options, io);
  const names = io.filesIn(files.sheet);
  if (names !== undefined) return assessClass({ ...files, names }, request, options, io);
  const { style, unit, fractions, hint, json, verbose, quiet, out, replace } = options;
  const sheet = readNamed(io, files.sheet);
  if (out !== undefined || replace === true) refuseWriting(out === undefined ? 'replace' : 'out');
  const marking = inStyle(style, () =>
    markSheet({ ...request, sheet: sheet.text, sheetFile: sheet.file }),
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

function refuseWriting(field: string): never {
  throw new InputError('bad-option', {
    what: 'one sheet is told, and nothing is written',
    allowed: 'together with a folder of sheets',
    place: { field },
  });
}
