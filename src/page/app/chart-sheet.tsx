/** The chart as a grid of cells, to be typed, pasted and dropped into. */
import { useMemo } from 'preact/hooks';
import { namesMeasurement } from '../../chart/measurement-table';
import { sizesOf } from '../chart-sizes';
import { parseNumberCell } from '../../table/number-cell';
import { fromMillimeters, inchFraction, toMillimeters, trimmed } from '../../units';
import type { LengthUnit } from '../../units';
import { Choice } from './controls';
import { Grid } from './grid';
import type { GridKind } from './grid';
import type { Shared } from './page';
import { FileButton, useTaken } from './taken-file';

/** The chart with the size that is the base. */
export function ChartSheet(props: Shared) {
  const { state, change, view, refused } = props;
  const { file } = state.chart;
  const unit = view?.display.unit ?? 'cm';
  const kind: GridKind = {
    name: 'Cells of the chart',
    tells: namesMeasurement,
    column: 'size',
    row: 'measurement',
    inOtherUnit: (cell) => inOtherUnit(cell, unit),
  };
  const { take, trouble } = useTaken(change.chart);
  return (
    <section
      class="slip chart"
      aria-label="Chart of body measurements"
      onDragOver={(event) => {
        event.preventDefault();
      }}
      onDrop={(event) => {
        event.preventDefault();
        take(event.dataTransfer?.files);
      }}
    >
      <h2>Bodies</h2>
      <p class="row">
        <span class="file">{file}</span>
        <FileButton onFile={change.chart}>Open a chart</FileButton>
        {trouble}
        <Base {...props} />
      </p>
      <Grid
        table={state.chart}
        kind={kind}
        refused={refused}
        doubts={view?.doubts ?? []}
        onText={(next, about) => {
          change.state((now) => ({ ...now, chart: { text: next, file } }), `chart ${about}`);
        }}
      />
    </section>
  );
}

/** The choice of the base, from which all rules start. */
function Base({ state, change, view }: Shared) {
  const own = useMemo(() => sizesOf(state.chart), [state.chart]);
  const labels = own.length > 0 ? own : (view?.sizes ?? []);
  const base = state.asked.base ?? '';
  const offered = labels.includes(base) ? labels : [base, ...labels];
  return (
    <Choice
      label="base"
      value={base}
      options={offered.map((label) => [label, label])}
      onChoose={(next) => change.asked({ base: next }, 'base')}
    />
  );
}

/** A length of a cell in inches if it is metric, in centimeters if it is in inches. */
function inOtherUnit(value: string, unit: LengthUnit): string | undefined {
  const read = parseNumberCell(value);
  if (read.kind !== 'number') return undefined;
  const own = read.unit ?? unit;
  const mm = toMillimeters(read.value, own);
  return own === 'in'
    ? `${trimmed(fromMillimeters(mm, 'cm'), 1)} cm`
    : `${inchFraction(mm, 16)} in`;
}
