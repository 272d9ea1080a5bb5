/** What `assess` holds sheets against, and how it judges them, from its options. */
import type { ClassRequest } from '../study/mark/mark-class';
import type { LengthUnit } from '../units';
import { patternRequest } from './grade-request';
import type { Io } from './io';
import type { Telling } from './json-document';
import { readNamed } from './read-named';
import type { StyleOptions } from './style-request';
import { styleRequest } from './style-request';
import { withoutUndefined } from './without-undefined';

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
  /** Where the marks of a folder go. */
  readonly out?: string;
  readonly replace?: boolean;
}

/** The files of a call: a sheet or a folder of sheets, and the chart where no pattern is given. */
export interface AssessFiles {
  readonly sheet: string;
  readonly chart: string | undefined;
}

/** Reads the files that sheets are held against. Throws InputError for those that cannot be read. */
export function classRequest(
  files: AssessFiles,
  { style, set, project, pattern, rules, chart, seams, ...judged }: AssessCommandOptions,
  io: Io,
): ClassRequest {
  const { base, zero, tolerance, pieces, points, answered } = judged;
  const how = withoutUndefined({ base, zero, tolerance, pieces, points, answered });
  if (pattern !== undefined) {
    const given = { ...withoutUndefined({ rules, chart, seams }), pattern };
    return { ...how, ...patternRequest(given, io) };
  }
  const { text, file } = readNamed(io, files.chart ?? '');
  return { ...how, chart: text, file, ...styleRequest({ style, set, project }, io) };
}
