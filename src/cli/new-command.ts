/** `skirtgrade new`: a chart to begin with, asked for at a terminal or said by options. */
import { counted } from '../table/counted';
import { basename, dirname } from 'node:path';
import { InputError } from '../errors';
import type { NewChart } from '../jobs/new-chart';
import { newChart } from '../jobs/new-chart';
import { UNIT_WORDS } from '../units';
import type { ExitCode, Io } from './io';
import type { Telling } from './json-document';
import { tell } from './json-document';
import { writtenFacts } from './json-facts';
import type { ChartOrder } from './new-questions';
import { completeOrder } from './new-questions';
import { PROJECT_FILE } from './project-options';
import { wrappedParagraph } from './text-table';
import type { WrittenFiles } from './write-files';
import { namesReport } from './written-report';

/** The options of `new` as commander reads them. */
export type NewCommandOptions = Omit<ChartOrder, 'path'> & Telling & { readonly replace?: boolean };

/** The file that is written where none is named. */
const USUAL = 'my-chart.csv';

/**
 * Writes the chart and tells what to do next. Throws InputError for what is missing or cannot be, and
 * where the file is there already; Stopped at an interrupt. Nothing is written then.
 */
export async function newCommand(
  path: string | undefined,
  options: NewCommandOptions,
  io: Io,
): Promise<ExitCode> {
  const { replace = false, json, quiet, ...request } = options;
  const checked = (text: string): string => chartPath(text, replace, io);
  const given: ChartOrder = { ...request, path: path === undefined ? undefined : checked(path) };
  const isAsked = io.converse !== undefined && json !== true;
  const order = isAsked
    ? await io.converse((ask) =>
        completeOrder(given, ask, {
          usual: USUAL,
          checked,
          refuse: (message) => {
            io.error(`${message}\n`);
          },
        }),
      )
    : given;
  needAll(order);
  const file = order.path ?? checked(USUAL);
  const chart = newChart(order);
  const written = await writeChart(file, chart.text, replace, io);
  return tell(
    io,
    'new',
    { json, quiet },
    {
      exitCode: 0,
      words: () => report(file, chart),
      brief: () => namesReport(written),
      facts: () => ({
        chart: file,
        title: order.title,
        ...{ unit: chart.unit, sizes: chart.sizes, table: chart.table?.id },
        ...{ filled: chart.filled, to_fill: chart.toFill, left_to_style: chart.leftToStyle },
        ...writtenFacts(written),
      }),
    },
  );
}

/** Throws InputError `bad-option` with all that is missing. */
function needAll({ unit, sizes, like }: ChartOrder): void {
  if (like !== undefined) return;
  const missing = [
    ...(unit === undefined ? ['--unit <unit>'] : []),
    ...(sizes === undefined ? ['--sizes <a,b,c> or --like <table>'] : []),
  ];
  if (missing.length === 0) return;
  throw new InputError('bad-option', {
    what: `new lacks ${missing.join(', and ')}`,
    allowed: `skirtgrade new ${USUAL} --unit cm --sizes "36,38,40", or at a terminal without options`,
  });
}

/** Throws InputError for a path that cannot be a new chart's. */
function chartPath(path: string, replace: boolean, io: Io): string {
  const refused = (what: string, allowed: string): InputError =>
    new InputError('bad-option', { what, allowed, got: path });
  if (!/.\.csv$/iu.test(basename(path)))
    throw refused('a chart is a CSV file', `a name that ends in .csv, such as ${USUAL}`);
  if (basename(path).toLowerCase() === PROJECT_FILE)
    throw refused(
      'a file of this name is a project, not a chart',
      `another name, such as ${USUAL}`,
    );
  if (!replace && io.exists(path)) throw thereAlready(path);
  return path;
}

function thereAlready(path: string): InputError {
  return new InputError('output-changed', {
    what: 'there is a file of this name, which is left as it is',
    allowed: 'another name for the new chart',
    orField: 'replace',
    got: path,
  });
}

/** Writes it as a set of its own. Throws InputError about the chart, not about a folder of results. */
async function writeChart(
  path: string,
  text: string,
  replace: boolean,
  io: Io,
): Promise<WrittenFiles> {
  const name = basename(path);
  try {
    return await io.write(dirname(path), [{ name, text }], { set: `chart ${name}`, replace });
  } catch (error) {
    if (!(error instanceof InputError)) throw error;
    if (error.code === 'output-changed') throw thereAlready(path);
    throw new InputError(error.code, {
      what: 'the chart cannot be written',
      allowed: 'the path of a file in a folder that can be written to',
      got: error.problem.got ?? path,
      place: { file: path },
    });
  }
}

/** What was written and what comes next. */
function report(file: string, chart: NewChart): string {
  const { sizes, unit, filled, toFill, leftToStyle, table } = chart;
  const count = counted(sizes.length, 'size');
  const head = `Written: ${file}, ${count} in ${UNIT_WORDS[unit]}.`;
  const base = sizes[Math.floor((sizes.length - 1) / 2)] ?? '';
  const call = `skirtgrade grade ${shellWord(file)} --base ${shellWord(base)}`;
  const next = (words: string): string =>
    `\n${words}\n  skirtgrade check ${shellWord(file)}\n  ${call}\n`;
  if (table === undefined)
    return (
      wrappedParagraph(head) +
      wrappedParagraph(
        `To be filled in: ${toFill.join(', ')}. The file says how each is measured; take a row away ` +
          `to leave it to the style, but waist_girth and hip_girth.`,
      ) +
      next('Open it in a spreadsheet or a text editor, fill it in, save it as CSV, then:')
    );
  return (
    wrappedParagraph(head) +
    wrappedParagraph(
      `From ${table.title}: ${filled.join(', ')}. Bodies, not garments; the file says how certain ` +
        `each row is. Left to the style: ${leftToStyle.join(', ')}, unless you add a row.`,
    ) +
    next('Replace what your own customers measure otherwise, then:')
  );
}

/** A word as a shell takes it. */
function shellWord(text: string): string {
  return /^[\w./\\:-]+$/u.test(text) ? text : `"${text}"`;
}
