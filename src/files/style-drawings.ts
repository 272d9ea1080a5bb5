/** The styles as line drawings, each drafted for one body, so that they can be chosen by eye. */
import { readChart } from '../chart/read-chart';
import type { StyleChoice } from '../draft/style-file';
import { draftRange } from '../jobs/draft-range';
import { STAND_IN_BASE, STAND_IN_CHART } from '../jobs/stand-in';
import { zipOf } from '../pattern/zip';
import { lineDrawingSheet } from '../render/line-drawing';
import { svg } from '../render/svg';
import type { ResultFile } from './result-file';

/** A file `<name>.svg` for each style, in their order. */
export function styleDrawings(styles: readonly StyleChoice[]): readonly ResultFile[] {
  const chart = readChart(STAND_IN_CHART, 'stand-in');
  const base = chart.sizes.indexOf(STAND_IN_BASE);
  return styles.flatMap((style) => {
    const { name } = style.style;
    const size = draftRange(chart, base, { style }).sizes[base];
    if (size === undefined) return [];
    const { pieces, parameters } = size.draft;
    const sheet = lineDrawingSheet(name, { pieces, zip: zipOf(pieces, parameters) });
    return sheet === undefined ? [] : [{ name: `${name}.svg`, text: svg(sheet) }];
  });
}
