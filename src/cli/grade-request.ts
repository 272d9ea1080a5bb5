/** The options of a call that grades, and the requests that they make. */
import { basename } from 'node:path';
import { InputError } from '../errors';
import type { ExportRequest } from '../files/exports';
import type { GradeRequest, PatternRequest } from '../jobs/requests';
import type { Io } from './io';
import { nameOf, readNamed } from './read-named';
import type { StyleOptions } from './style-request';
import { styleRequest } from './style-request';

/** What is asked of a chart; a request with names of files for texts. */
export type GradeRequestOptions = Omit<
  GradeRequest,
  'chart' | 'file' | 'style' | 'set' | 'against'
> &
  StyleOptions & {
    readonly against: readonly string[];
    readonly out?: string;
    readonly replace?: boolean;
  };

/** What is asked of a pattern that is given; a request with names of files for texts. */
export type PatternRequestOptions = Omit<
  PatternRequest,
  'pattern' | 'rules' | 'namedRules' | 'chart' | 'seams'
> & {
  readonly pattern: string;
  readonly rules?: string;
  readonly library?: string;
  readonly chart?: string;
  readonly seams?: string;
  readonly out?: string;
  readonly replace?: boolean;
};

/** Names of files for a spec, and what else is asked of what is written on wish. */
export interface ExportOptions {
  readonly enlarge?: string;
  readonly unfold?: boolean;
  readonly measures?: string;
  readonly measured?: string;
}

/** Reads the files that the options name. */
export function gradeRequest(path: string, options: GradeRequestOptions, io: Io): GradeRequest {
  const { text, file } = readNamed(io, path);
  const { style, set, project, against, ...rest } = options;
  return {
    ...rest,
    chart: text,
    file,
    ...styleRequest({ style, set, project }, io),
    ...(against.length > 0 ? { against } : {}),
  };
}

/** Reads the files that the options name. Throws InputError `bad-option` without a rule sheet. */
export function patternRequest(options: PatternRequestOptions, io: Io): PatternRequest {
  const { pattern, rules, library, chart, seams, ...rest } = options;
  if (rules === undefined) {
    throw new InputError('bad-option', {
      what: 'a pattern is graded by a rule sheet',
      allowed: '--rules <rules.csv> together with --pattern',
      place: { field: 'rules' },
    });
  }
  return {
    ...rest,
    pattern: readNamed(io, pattern),
    rules: readNamed(io, rules),
    ...(library === undefined ? {} : { namedRules: readNamed(io, library) }),
    ...(chart === undefined ? {} : { chart: readNamed(io, chart) }),
    ...(seams === undefined ? {} : { seams: readNamed(io, seams) }),
  };
}

/** Reads the lists that a spec is made from. */
export function exportRequest(
  { measures, measured, enlarge, unfold }: ExportOptions,
  io: Io,
): ExportRequest {
  return {
    ...(enlarge === undefined ? {} : { enlarge }),
    ...(unfold === undefined ? {} : { unfold }),
    ...(measures === undefined ? {} : { measures: readNamed(io, measures) }),
    ...(measured === undefined ? {} : { measured: readNamed(io, measured) }),
  };
}

/** The folder of the results: the one asked for, or one named after the file. */
export function outFolder(file: string, { out }: { readonly out?: string }): string {
  const name = basename(nameOf(file)).replace(/\.[^.]*$/u, '');
  // A folder whose name ends in a dot or a blank cannot be opened on Windows.
  return out ?? `output/${name.replace(/[. ]+$/u, '')}`;
}
