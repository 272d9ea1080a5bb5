/** `skirtgrade page`: the whole engine with a chart in one file that a browser opens. */
import { basename, dirname } from 'node:path';
import { cutShapes } from '../files/cut-shapes';
import { gradeChart } from '../jobs/grade-chart';
import { requestOf } from '../page/engine/graded';
import { pageFile } from '../page/page-file';
import type { ExitCode, Io } from './io';
import type { Telling } from './json-document';
import { tell } from './json-document';
import { writtenFacts } from './json-facts';
import { pageParts } from './page-parts';
import type { PageOptions } from './page-state';
import { pageState } from './page-state';
import { wrappedParagraph } from './text-table';
import { namesReport, outdatedReport } from './written-report';

/** The options of `page` as commander reads them. */
export interface PageCommandOptions extends PageOptions, Telling {
  /** Path of the page. */
  readonly out: string;
  readonly replace?: boolean;
}

/**
 * Writes the page and tells to open it. Throws InputError for a chart that cannot be graded as asked, and
 * what writing throws.
 */
export async function pageCommand(
  path: string | undefined,
  { out, replace, json, quiet, ...options }: PageCommandOptions,
  io: Io,
): Promise<ExitCode> {
  const state = pageState(path, options, io);
  // What the engine refuses is refused here, before a page is made of it.
  const result = gradeChart(requestOf(state), []);
  const file = { name: basename(out), text: pageFile(pageParts(), state) };
  const order = { set: `page ${file.name}`, shows: cutShapes(result), replace };
  const written = await io.write(dirname(out), [file], order);
  return tell(
    io,
    'page',
    { json, quiet },
    {
      exitCode: 0,
      words: () =>
        wrappedParagraph(
          `Written to ${out}, with ${path === undefined ? 'an invented chart' : state.chart.file} inside. ` +
            'Open it in a browser; it needs no network and sends nothing.',
        ) + outdatedReport(written.outdated),
      brief: () => namesReport(written),
      facts: () => writtenFacts(written),
    },
  );
}
