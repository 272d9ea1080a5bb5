/** A table as a grid of cells to be typed and pasted into, with what is wrong with a cell where it stands. */
import { useMemo, useRef } from 'preact/hooks';
import type { NamedText } from '../../jobs/requests';
import type { TellingLine } from '../../table/delimiter';
import type { CellGrid } from '../cell-grid';
import {
  asWritten,
  gridOf,
  gridText,
  pastedCells,
  withCells,
  withColumn,
  withRow,
  withoutColumn,
  withoutRow,
} from '../cell-grid';
import type { DoubtView, Refused } from '../wish';
import { Button } from './controls';

/** What kind of table it is. */
export interface GridKind {
  /** What the cells are of, for those who hear the page. */
  readonly name: string;
  /** Knows the lines that only such a table has. */
  readonly tells: TellingLine;
  /** Knows the row of heads; without it that is the first. */
  readonly isHeads?: TellingLine;
  /** What a column and a row are, such as `size`; none are added or taken away without their word. */
  readonly column?: string | undefined;
  readonly row?: string;
  /** Whether cells below a head are names; without it those of the first column are. */
  readonly isName?: (head: string) => boolean;
  /** What a number says in another unit. */
  readonly inOtherUnit?: (cell: string) => string | undefined;
}

interface Props {
  readonly table: NamedText;
  readonly kind: GridKind;
  readonly refused: Refused | undefined;
  readonly doubts: readonly DoubtView[];
  /** Gets the text with what was changed in it, and what the change was about. */
  readonly onText: (text: string, about: string) => void;
}

/** The grid with what adds to it, or the bare text of what is no table of cells. */
export function Grid({ table, kind, refused, doubts, onText }: Props) {
  const { text, file } = table;
  // Rows that are blank as yet are no rows of the text.
  const typed = useRef<{ readonly text: string; readonly grid: CellGrid } | undefined>(undefined);
  const grid = useMemo(
    () => (typed.current?.text === text ? typed.current.grid : gridOf(text, file, kind.tells)),
    [text, file, kind.tells],
  );
  if (grid === undefined)
    return (
      <label class="plain">
        This text is no table of cells:
        <textarea
          rows={Math.max(4, Math.min(24, text.split('\n').length + 1))}
          spellcheck={false}
          value={text}
          onInput={(event) => {
            onText(event.currentTarget.value, 'text');
          }}
        />
      </label>
    );
  const onGrid = (next: CellGrid, about: string): void => {
    typed.current = { text: gridText(next), grid: asWritten(next) };
    onText(typed.current.text, about);
  };
  const troubles = troublesIn(file, refused, refused === undefined ? doubts : []);
  const heads = Math.max(0, grid.rows.findIndex(kind.isHeads ?? (() => true)));
  const { column } = kind;
  return (
    <>
      <div class="scroll" tabIndex={0} role="region" aria-label={kind.name}>
        <table class="grid">
          <tbody>
            {grid.rows.map((line, row) => (
              <tr>
                {line.map((_, at) => (
                  <GridCell {...{ grid, kind, troubles, onGrid, heads, row }} column={at} />
                ))}
              </tr>
            ))}
          </tbody>
        </table>
      </div>
      <Troubles troubles={troubles} />
      <p class="row">
        {column !== undefined && (
          <Button onPress={() => onGrid(withColumn(grid, grid.rows[0]?.length ?? 0, ''), '')}>
            Add a {column}
          </Button>
        )}
        {kind.row !== undefined && (
          <Button onPress={() => onGrid(withRow(grid, ''), '')}>Add a {kind.row}</Button>
        )}
      </p>
    </>
  );
}

interface CellProps {
  readonly grid: CellGrid;
  readonly kind: GridKind;
  readonly troubles: ReadonlyMap<string, Trouble>;
  readonly onGrid: (grid: CellGrid, about: string) => void;
  /** The row that has the heads. */
  readonly heads: number;
  readonly row: number;
  readonly column: number;
}

/** A cell at its place; heads of columns and of rows can take theirs away. */
function GridCell({ grid, kind, troubles, onGrid, heads, row, column }: CellProps) {
  const { rows, fileRows } = grid;
  const value = rows[row]?.[column] ?? '';
  const isNamed = (at: number): boolean => kind.isName?.(rows[heads]?.[at] ?? '') ?? at === 0;
  const isHead = row === heads;
  const isFirst = column === 0;
  const names = (rows[row] ?? []).filter((cell, at) => isNamed(at) && at !== column && cell !== '');
  const cell = (
    <Cell
      value={value}
      name={isHead ? `heading ${column + 1}` : [...names, rows[heads]?.[column] ?? ''].join(', ')}
      trouble={troubles.get(placeKey(fileRows[row] ?? 0, column + 1))}
      other={isHead || isNamed(column) ? undefined : kind.inOtherUnit?.(value)}
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
  const goes = isHead
    ? kind.column !== undefined && !isNamed(column)
    : isFirst && kind.row !== undefined;
  const look = isNamed(column) ? 'name' : undefined;
  if (!goes) {
    if (!isHead && !isFirst) return <td class={look}>{cell}</td>;
    return (
      <th scope={isHead ? 'col' : 'row'} class={look}>
        {cell}
      </th>
    );
  }
  const of = isHead ? `${kind.column} ${value}` : `row ${[value, ...names].join(' ').trim()}`;
  return (
    <th scope={isHead ? 'col' : 'row'} class={look}>
      {cell}
      <Button
        class="quiet remove"
        aria-label={`Remove ${of}`}
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

/** By the place of the cell in the file; what is told of a whole row stands at its first cell. */
function troublesIn(
  file: string,
  refused: Refused | undefined,
  doubts: readonly DoubtView[],
): ReadonlyMap<string, Trouble> {
  const troubles = new Map<string, Trouble>();
  doubts.forEach(({ row, columns, text }, i) => {
    for (const column of columns)
      troubles.set(placeKey(row, column), { kind: 'doubted', text, id: `doubt-${i}` });
  });
  refused?.each.forEach(({ message, place }, i) => {
    if (place.file !== file) return;
    const { row = 0, column = 1 } = place;
    const key = placeKey(row, column);
    if (!troubles.has(key))
      troubles.set(key, { kind: 'refused', text: message, id: `refused-${i}` });
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
