/**
 * What can be written besides the files that every result has. A new format is a maker of its own and
 * an entry in this list; the command line has an option of its name.
 */
import type { Finding } from '../check/finding';
import type { GradeResult } from '../jobs/grade-result';
import type { SpecRequest } from '../jobs/grade-spec';
import type { SizeTable } from '../print/size-table';
import type { BinaryFile, ResultFile } from './result-file';

/** Files, and what they could not carry or what they found. */
export interface Exported {
  readonly files: readonly ResultFile[];
  /** Files that are no text. */
  readonly printed?: readonly BinaryFile[];
  readonly findings: readonly Finding[];
  /** What of it stands in the report. */
  readonly tables?: readonly SizeTable[];
}

/** A format that is written on wish. */
export interface Export {
  /** One word, by which it is asked for. */
  readonly name: string;
  /** What is written, in a few words. */
  readonly description: string;
  /** Makes the files; heavy libraries are loaded here. Throws InputError for what cannot be made. */
  readonly make: (result: GradeResult, request: ExportRequest) => Promise<Exported>;
}

/** What may be asked of what is written on wish. */
export interface ExportRequest extends SpecRequest {
  /** How many times as long as they are moves are drawn, as it was typed; what suits them if absent. */
  readonly enlarge?: string;
  /** Draws pieces on the fold whole in `nest.dxf`. */
  readonly unfold?: boolean;
}

/** In the order in which they are written and offered. */
export const EXPORTS: readonly Export[] = [
  {
    name: 'spec',
    description: 'points of measure with tolerances (CSV)',
    make: async (result, request) => (await import('./spec-files')).specFiles(result, request),
  },
  {
    name: 'breaks',
    description: 'the steps of each point, and where they change',
    make: async (result) => (await import('./break-files')).breakFiles(result),
  },
  {
    name: 'moves',
    description: 'the moves of all points as arrows (SVG)',
    make: async (result, { enlarge }) => (await import('./move-files')).moveFiles(result, enlarge),
  },
  {
    name: 'card',
    description: 'the cutting card: pieces, counts, areas (PDF, CSV)',
    make: async (result) => (await import('./card-files')).cardFiles(result),
  },
  {
    name: 'dxf',
    description: 'drawings for plotters and other programs',
    make: async (result, { unfold }) => (await import('./dxf-files')).dxfFiles(result, unfold),
  },
  {
    name: 'fabric',
    description: 'how much cloth to buy, and its lays',
    make: async (result) => (await import('./fabric-files')).fabricFiles(result),
  },
];

/** The files of the exports that are asked for by name, in the order of the list. */
export async function exportFiles(
  result: GradeResult,
  names: readonly string[],
  request: ExportRequest = {},
  exports: readonly Export[] = EXPORTS,
): Promise<Required<Exported>> {
  const asked = exports.filter(({ name }) => names.includes(name));
  const files: ResultFile[] = [];
  const printed: BinaryFile[] = [];
  const findings: Finding[] = [];
  const tables: SizeTable[] = [];
  for (const { make } of asked) {
    const made = await make(result, request);
    files.push(...made.files);
    printed.push(...(made.printed ?? []));
    findings.push(...made.findings);
    tables.push(...(made.tables ?? []));
  }
  return { files, printed, findings, tables };
}
