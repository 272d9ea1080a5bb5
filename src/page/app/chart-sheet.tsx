/** The chart as a grid of cells, to be typed, pasted and dropped into. */
import { useMemo } from 'preact/hooks';
import type { ChartGrid } from '../chart-grid';
import {
  gridOf,
  gridText,
  pastedCells,
  withCells,
  withColumn,
  withRow,
  withoutColumn,
  withoutRow,
} from '../chart-grid';
import { sizesOf } from '../chart-sizes';
import { InputError } from '../../errors';
import type { NamedText } from '../../jobs/requests';
import { parseNumberCell } from '../../table/number-cell';
import { fromMillimeters, inchFraction, toMillimeters, trimmed } from '../../units';
import type { LengthUnit } from '../../units';
import type { DoubtView } from '../wish';
import { Button } from './controls';
import { takenTable } from './dropped-table';
import type { Shared } from './page';

/** The grid, or the text of a chart that is no table at all. */
export function ChartSheet(props: Shared) {
  const { state, change, view, refused } = props;
  const { text, file } = state.chart;
  const grid = useMemo(() => gridOrNone(text, file), [text, file]);
  const setText = (next: string, about: string): void => {
    change.state((now) => ({ ...now, chart: { text: next, file } }), about);
  };
  const onDrop = (event: DragEvent): void => {
    event.preventDefault();
    const [dropped] = event.dataTransfer?.files ?? [];
    if (dropped !== undefined) void takenTable(dropped).then(change.chart);
  };
  return (
    <section
      class="slip chart"
      aria-label="Chart of body measurements"
      onDragOver={(event) => {
        event.preventDefault();
      }}
      onDrop={onDrop}
    >
      <h2>Bodies</h2>
      <p class="row">
        <span class="file">{file}</span>
        <OpenChart setChart={change.chart} />
        <Base {...props} />
      </p>
      {grid === undefined ? (
        <label class="plain">
          This text is no table of cells:
          <textarea
            rows={10}
            value={text}
            onInput={(event) => {
              setText(event.currentTarget.value, 'chart text');
            }}
          />
        </label>
      ) : (
        <Grid
          grid={grid}
          unit={view?.display.unit ?? 'cm'}
          troubles={troublesIn(refused, refused === undefined ? (view?.doubts ?? []) : [])}
          onGrid={(next, about) => {
            setText(gridText(next), about);
          }}
        />
      )}
    </section>
  );
}

function OpenChart({ setChart }: { readonly setChart: (chart: NamedText) => void }) {
  return (
    <label class="button">
      Open a chart
      <input
        type="file"
        accept=".csv,.txt,.tsv,text/csv"
        onChange={(event) => {
          const [chosen] = event.currentTarget.files ?? [];
          if (chosen !== undefined) void takenTable(chosen).then(setChart);
        }}
      />
    </label>
  );
}

function gridOrNone(text: string, file: string): ChartGrid | undefined {
  try {
    const grid = gridOf(text, file);
    return grid.rows.length === 0 ? undefined : grid;
  } catch (error) {
    if (error instanceof InputError) return undefined;
    throw error;
  }
}

/** The choice of the base, from which all rules start. */
function Base({ state, change, view }: Shared) {
  const own = useMemo(() => sizesOf(state.chart), [state.chart]);
  const labels = own.length > 0 ? own : (view?.sizes ?? []);
  const base = state.asked.base ?? '';
  return (
    <label class="choice">
      base{' '}
      <select
        value={base}
        onChange={(event) => {
          change.asked({ base: event.currentTarget.value }, 'base');
        }}
      >
        {!labels.includes(base) && <option value={base}>{base}</option>}
        {labels.map((label) => (
          <option value={label}>{label}</option>
        ))}
      </select>
    </label>
  );
}

interface GridProps {
  readonly grid: ChartGrid;
  readonly unit: LengthUnit;
  readonly troubles: ReadonlyMap<string, Trouble>;
  readonly onGrid: (grid: ChartGrid, about: string) => void;
}

/** Every cell to be typed into, and what is wrong with them below. */
function Grid(props: GridProps) {
  const { grid, troubles, onGrid } = props;
  const { rows } = grid;
  const [heads = []] = rows;
  return (
    <>
      <div class="scroll" tabIndex={0} role="region" aria-label="Cells of the chart">
        <table class="grid">
          <tbody>
            {rows.map((line, row) => (
              <tr>
                {line.map((_, column) => (
                  <GridCell {...props} row={row} column={column} />
                ))}
              </tr>
            ))}
          </tbody>
        </table>
      </div>
      <Troubles troubles={troubles} />
      <p class="row">
        <Button onPress={() => onGrid(withColumn(grid, heads.length, ''), '')}>Add a size</Button>
        <Button onPress={() => onGrid(withRow(grid, ''), '')}>Add a measurement</Button>
      </p>
    </>
  );
}

/** A cell at its place; heads of sizes and rows can take theirs away. */
function GridCell({
  grid,
  unit,
  troubles,
  onGrid,
  row,
  column,
}: GridProps & { readonly row: number; readonly column: number }) {
  const { rows, fileRows } = grid;
  const value = rows[row]?.[column] ?? '';
  const isHead = row === 0;
  const isName = column === 0;
  const cell = (
    <Cell
      value={value}
      name={
        isHead ? `heading ${column + 1}` : `${rows[row]?.[0] ?? ''}, ${rows[0]?.[column] ?? ''}`
      }
      trouble={troubles.get(placeKey(fileRows[row] ?? 0, column + 1))}
      other={isHead || isName ? undefined : inOtherUnit(value, unit)}
      onInput={(next) => {
        onGrid(withCells(grid, row, column, [[next]]), `cell ${row} ${column}`);
      }}
      onPaste={(event) => {
        const pasted = event.clipboardData?.getData('text/plain') ?? '';
        if (!/[\t\n]/u.test(pasted.trimEnd())) return;
        event.preventDefault();
        onGrid(withCells(grid, row, column, pastedCells(pasted)), '');
      }}
    />
  );
  if (isHead === isName) return isHead ? <th scope="col">{cell}</th> : <td>{cell}</td>;
  return (
    <th scope={isHead ? 'col' : 'row'}>
      {cell}
      <Button
        class="quiet remove"
        aria-label={`Remove ${isHead ? 'size' : 'row'} ${value}`}
        onPress={() => onGrid(isHead ? withoutColumn(grid, column) : withoutRow(grid, row), '')}
      >
        {'\u00d7'}
      </Button>
    </th>
  );
}

function Cell({
  value,
  name,
  trouble,
  other,
  onInput,
  onPaste,
}: {
  readonly value: string;
  readonly name: string;
  readonly trouble: Trouble | undefined;
  readonly other: string | undefined;
  readonly onInput: (value: string) => void;
  readonly onPaste: (event: ClipboardEvent) => void;
}) {
  return (
    <>
      <input
        type="text"
        value={value}
        size={Math.max(4, value.length)}
        aria-label={name}
        aria-invalid={trouble?.kind === 'refused'}
        aria-describedby={trouble === undefined ? undefined : trouble.id}
        class={trouble?.kind}
        title={trouble?.text}
        onInput={(event) => {
          onInput(event.currentTarget.value);
        }}
        onPaste={onPaste}
      />
      {other !== undefined && <span class="other">{other}</span>}
    </>
  );
}

/** What is wrong with a cell, or doubtful about it. */
interface Trouble {
  readonly kind: 'refused' | 'doubted';
  readonly text: string;
  readonly id: string;
}

function placeKey(row: number, column: number): string {
  return `${row} ${column}`;
}

/** By the place of the cell in the file. */
function troublesIn(
  refused: Shared['refused'],
  doubts: readonly DoubtView[],
): ReadonlyMap<string, Trouble> {
  const troubles = new Map<string, Trouble>();
  doubts.forEach(({ row, columns, text }, i) => {
    for (const column of columns)
      troubles.set(placeKey(row, column), { kind: 'doubted', text, id: `doubt-${i}` });
  });
  const { row, column } = refused?.place ?? {};
  if (refused !== undefined && row !== undefined && column !== undefined)
    troubles.set(placeKey(row, column), {
      kind: 'refused',
      text: refused.message,
      id: 'cell-refused',
    });
  return troubles;
}

function Troubles({ troubles }: { readonly troubles: ReadonlyMap<string, Trouble> }) {
  const told = new Map([...troubles.values()].map((one) => [one.id, one]));
  return (
    <ul class="troubles">
      {[...told.values()].map(({ id, kind, text }) => (
        <li id={id} class={kind}>
          {text}
        </li>
      ))}
    </ul>
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
