/** Whom the sizes of a chart fit, in the words and the picture of the command line. */
import { isInFractions } from '../../chart/size-chart';
import { coverChart } from '../../coverage/cover-chart';
import type { CoveredRange } from '../../coverage/cover-chart';
import { populations } from '../../coverage/population';
import {
  changeWords,
  leftOutWords,
  percentWords,
  rulesWords,
  servedWords,
  sourceNotes,
} from '../../coverage/words';
import { coverageDrawing, suggestedChart } from '../../files/coverage-files';
import { counted } from '../../table/counted';
import { displayAsTyped } from '../../table/typed-fractions';
import type { LengthDisplay } from '../../units';
import { showNumber } from '../../units';
import type { AskedCrowd } from '../state';
import type { CoverageView, Pattern, SizeShare } from '../wish';
import { requestOf } from './graded';

/** Holds the sizes against a crowd. Throws InputError as `coverChart` does. */
export function coverageView(pattern: Pattern, asked: AskedCrowd): CoverageView {
  const { chart, file, style, set, unit, fractions } = requestOf(pattern);
  const result = coverChart({
    ...{ chart, ...asked },
    ...(file === undefined ? {} : { file }),
    ...(style === undefined ? {} : { style }),
    ...(set === undefined ? {} : { set }),
  });
  const display = displayAsTyped(
    { unit, fractions },
    result.chart.unit,
    isInFractions(result.chart),
  );
  const { range, changes, published, suggested } = result;
  return {
    populations: populations().map(({ id, title }) => [id, title]),
    served: servedWords(result),
    rules: rulesWords(result, display),
    notes: sourceNotes(result),
    sizes: sizeShares(range, display),
    leftOut: leftOutWords(range).map(({ share, words }) => [words, percentWords(share)]),
    changes: changes.map((change) => [changeWords(change, display), signedShare(change.wins)]),
    published: published.map(({ name, sizes, coverage }) => [
      `${name}, ${counted(sizes.length, 'size')}`,
      percentWords(coverage.served),
    ]),
    drawing: coverageDrawing(result, display),
    ...(suggested === undefined
      ? {}
      : {
          suggested: {
            served: percentWords(suggested.coverage.served),
            sizes: sizeShares(suggested, display),
            chart: suggestedChart(result, suggested),
          },
        }),
  };
}

function sizeShares({ sizes, coverage }: CoveredRange, display: LengthDisplay): SizeShare[] {
  return sizes.map(({ label, waist, hip }, i) => [
    label,
    showNumber(waist, display),
    showNumber(hip, display),
    percentWords(coverage.bySize[i] ?? 0),
  ]);
}

function signedShare(share: number): string {
  return `${share < 0 ? '\u2212' : '+'}${percentWords(Math.abs(share))}`;
}
