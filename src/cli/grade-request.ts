/** The options that every command which grades a chart has in common. */
import { basename } from 'node:path';
import type { AllowancePreset } from '../draft/allowance-parameters';
import type { GradeRequest } from '../jobs/grade-chart';
import type { LinesShown } from '../render/lines-shown';
import type { LengthUnit } from '../units';
import type { Io } from './io';
import type { StyleOptions } from './style-request';
import { styleRequest } from './style-request';

/** These options as commander reads them: texts as typed, files by their paths. */
export interface GradeRequestOptions extends StyleOptions {
  readonly base: string;
  readonly allowances?: AllowancePreset;
  readonly sizes?: readonly string[];
  readonly round?: string;
  readonly stack?: string;
  readonly unit?: LengthUnit;
  readonly fractions?: boolean;
  readonly lines?: LinesShown;
  /** Ids of published tables; a choice that fits the chart if empty. */
  readonly against: readonly string[];
  /** Folder of the results; see `outFolder` if absent. */
  readonly out?: string;
}

/** Reads the files that the options name. */
export function gradeRequest(file: string, options: GradeRequestOptions, io: Io): GradeRequest {
  const { style, set, against, ...rest } = options;
  return {
    ...rest,
    chart: io.readText(file),
    file,
    ...styleRequest({ style, set }, io),
    ...(against.length > 0 ? { against } : {}),
  };
}

/** The folder of the results: the one asked for, or one named after the chart. */
export function outFolder(file: string, { out }: Pick<GradeRequestOptions, 'out'>): string {
  return out ?? `output/${basename(file).replace(/\.[^.]*$/, '')}`;
}
