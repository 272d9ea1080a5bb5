/** `skirtgrade coverage`: whom the sizes of a chart fit, and whom they leave out. */
import { present } from '../lists/present';
import type { Finding } from '../check/finding';
import { notReadFindings, unreadInChart } from '../check/not-read';
import { counted } from '../table/counted';
import { isInFractions } from '../chart/size-chart';
import { displayAsTyped } from '../table/typed-fractions';
import type { ChartCoverage, CoverRequest, CoveredRange } from '../coverage/cover-chart';
import { SUGGESTED, coverChart } from '../coverage/cover-chart';
import {
  changeWords,
  leftOutWords,
  percentWords,
  rulesWords,
  servedWords,
  sourceNotes,
} from '../coverage/words';
import { coverageFiles, suggestedChart } from '../files/coverage-files';
import type { LengthDisplay, LengthUnit } from '../units';
import { UNIT_WORDS, showNumber } from '../units';
import type { ExitCode, Io } from './io';
import type { Telling } from './json-document';
import { tell } from './json-document';
import { writtenFacts } from './json-facts';
import { notReadFacts, notReadLine } from './not-read-line';
import { readNamed } from './read-named';
import type { StyleOptions } from './style-request';
import { styleRequest } from './style-request';
import { textTable, wrappedParagraph } from './text-table';
import { wholeNumber } from './whole-number';
import { withoutUndefined } from './without-undefined';
import type { WrittenFiles } from './write-files';
import { namesReport } from './written-report';

/** The options of `coverage` as commander reads them. */
export interface CoverageCommandOptions extends StyleOptions, Telling {
  readonly bodies?: string;
  readonly weights?: string;
  readonly population?: string;
  readonly waistTolerance?: string;
  readonly hipTolerance?: string;
  readonly give?: string;
  readonly suggest?: string;
  readonly unit?: LengthUnit;
  readonly fractions?: boolean;
  readonly out?: string;
  readonly replace?: boolean;
}

/** Tells the shares, and writes them and the picture where a folder is asked for. Gives 0. */
export async function coverageCommand(
  path: string,
  options: CoverageCommandOptions,
  io: Io,
): Promise<ExitCode> {
  const chart = readNamed(io, path);
  const { style, set, project, bodies, suggest, out, replace } = options;
  const { weights, population, waistTolerance, hipTolerance, give } = options;
  const request: CoverRequest = {
    ...{ chart: chart.text, file: chart.file },
    ...styleRequest({ style, set, project }, io),
    ...withoutUndefined({ weights, population, waistTolerance, hipTolerance, give }),
    ...(bodies === undefined ? {} : { bodies: readNamed(io, bodies) }),
    ...(suggest === undefined ? {} : { suggest: suggestedCount(suggest) }),
  };
  io.progress('fitting bodies to the sizes');
  const result = coverChart(request);
  const display = displayAsTyped(options, result.chart.unit, isInFractions(result.chart));
  const written =
    out === undefined
      ? undefined
      : await io.write(out, coverageFiles(result, display), { set: 'coverage', replace });
  return tell(io, 'coverage', options, {
    exitCode: 0,
    words: () => coverageReport(result, display, written),
    brief: () => (written === undefined ? servedLine(result) : namesReport(written)),
    facts: () => ({
      ...coverageFacts(result),
      not_read: notReadFacts(notReadInChart(result)),
      ...(written === undefined ? {} : writtenFacts(written)),
    }),
  });
}

function suggestedCount(text: string): number {
  const what = 'the number of sizes to propose is not usable';
  return wholeNumber(text, { field: 'suggest', what, allowed: SUGGESTED });
}

function notReadInChart({ chart, source }: ChartCoverage): readonly Finding[] {
  const inList = 'bodies' in source ? notReadFindings(unreadInChart(source), false) : [];
  return [...notReadFindings(unreadInChart(chart)), ...inList];
}

function coverageReport(
  result: ChartCoverage,
  display: LengthDisplay,
  written: WrittenFiles | undefined,
): string {
  const { range, suggested, changes } = result;
  const out = leftOutWords(range).map(({ share, words }) => [`  ${percentWords(share)}`, words]);
  return present([
    servedLine(result) +
      sourceNotes(result)
        .map((note) => wrappedParagraph(note))
        .join(''),
    wrappedParagraph(rulesWords(result, display)),
    ...notReadLine(notReadInChart(result)),
    sizesTable(range, display),
    out.length > 0 && `Left out\n${textTable(out, 2)}`,
    changes.length > 0 && changesReport(result, display),
    publishedReport(result),
    suggested && suggestedReport(result, suggested, display),
    written && wrappedParagraph(`Written to ${written.folder}: ${written.names.join(', ')}`, 2),
  ]).join('\n');
}

function servedLine(result: ChartCoverage): string {
  return wrappedParagraph(servedWords(result));
}

function sizesTable({ sizes, coverage }: CoveredRange, display: LengthDisplay): string {
  const rows = sizes.map(({ label, waist, hip }, i) => [
    label,
    showNumber(waist, display),
    showNumber(hip, display),
    percentWords(coverage.bySize[i] ?? 0),
  ]);
  return `Share that each size serves, ${UNIT_WORDS[display.unit]}\n${textTable([
    ['size', 'waist', 'hip', 'share'],
    ...rows,
  ])}`;
}

/** The best change of each kind; the one that wins most is told first. */
function changesReport({ changes }: ChartCoverage, display: LengthDisplay): string {
  const rows = changes.map((change) => {
    const sign = change.wins < 0 ? '-' : '+';
    return wrappedParagraph(
      `  ${sign}${percentWords(Math.abs(change.wins))}  ${changeWords(change, display)}`,
      11,
    );
  });
  return `What one change would win, the best of each kind\n${rows.join('')}`;
}

function publishedReport({ published }: ChartCoverage): string {
  const rows = published.map(({ name, sizes, coverage }) => [
    `  ${name}`,
    counted(sizes.length, 'size'),
    percentWords(coverage.served),
  ]);
  return `Published tables under the same rules\n${textTable(rows)}`;
}

function suggestedReport(
  result: ChartCoverage,
  suggested: CoveredRange,
  display: LengthDisplay,
): string {
  return (
    wrappedParagraph(
      `${counted(suggested.sizes.length, 'size')} proposed would serve ${percentWords(suggested.coverage.served)}. ` +
        'Even intervals over waist and hip after ISO 8559-3, as it is known here from memory, unverified; ' +
        'which first size and which steps is a search of our own. As a chart that grade takes:',
    ) +
    `\n${suggestedChart(result, suggested)}` +
    `\n${sizesTable(suggested, display)}`
  );
}

function coverageFacts({
  range,
  style,
  source,
  rules,
  changes,
  published,
  suggested,
}: ChartCoverage) {
  const facts = ({ name, sizes, coverage }: CoveredRange): object => ({
    name,
    served: coverage.served,
    sizes: sizes.map(({ label, waist, hip }, i) => ({
      ...{ size: label, waist, hip },
      share: coverage.bySize[i],
    })),
    left_out: coverage.leftOut,
  });
  return {
    chart: range.name,
    style,
    crowd:
      'bodies' in source
        ? { bodies: source.file, counted: source.bodies.length, set_aside: source.setAside.length }
        : { population: source.id, sample: source.sample, certainty: source.certainty },
    rules,
    coverage: facts(range),
    changes: changes.map(({ kind, by, size, added, wins }) => ({ kind, by, size, added, wins })),
    published: published.map(facts),
    ...(suggested === undefined ? {} : { suggested: facts(suggested) }),
  };
}
