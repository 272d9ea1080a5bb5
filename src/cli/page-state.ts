/** The state that a page opens with, from the options of a call. */
import { basename } from 'node:path';
import demo from '../../size-charts/demo.csv';
import { readChart } from '../chart/read-chart';
import { statedBase } from '../chart/size-chart';
import type { NamedText } from '../jobs/requests';
import { middleSize } from '../page/chart-sizes';
import type { PageState } from '../page/state';
import { FIRST_LOOKS } from '../page/state';
import type { GradeRequestOptions } from './grade-request';
import type { Io } from './io';
import { readNamed } from './read-named';
import { isStyleFile, settingsOf } from './style-request';

/** What of a call's options a page is made with. */
export type PageOptions = Omit<GradeRequestOptions, 'out' | 'replace'>;

/** The chart that a page has where none is named: an invented one. */
const SAMPLE: NamedText = { text: demo, file: 'demo.csv' };

/**
 * Reads the files that the options name. Without a base that is the middle size, which the page shows and
 * lets choose. Throws InputError for a chart or a setting that cannot be read.
 */
export function pageState(path: string | undefined, options: PageOptions, io: Io): PageState {
  const chart = path === undefined ? SAMPLE : withoutFolder(readNamed(io, path));
  const styleFile = isStyleFile(options.style)
    ? withoutFolder(readNamed(io, options.style))
    : undefined;
  const { set, against, base, sizes, round, stack, unit, fractions, lines, allowances, blend } =
    options;
  const { project } = options;
  const read = readChart(chart.text, chart.file);
  const given = { sizes, round, stack, unit, fractions, lines, allowances, blend };
  return {
    chart,
    ...(styleFile === undefined ? {} : { styleFile }),
    ...(project === undefined ? {} : { project }),
    asked: {
      base: base ?? statedBase(read) ?? middleSize(read.sizes) ?? '',
      ...(styleFile === undefined ? { style: options.style } : {}),
      set: settingsOf(set),
      ...(against.length > 0 ? { against } : {}),
      ...Object.fromEntries(Object.entries(given).filter(([, value]) => value !== undefined)),
    },
    looks: FIRST_LOOKS,
  };
}

/** A page tells nothing of the machine that it was made on. */
function withoutFolder({ text, file }: NamedText): NamedText {
  return { text, file: basename(file) };
}
