/** A pattern that somebody has already: its files in the place of chart and style, its rules to be edited. */
import { useState } from 'preact/hooks';
import type { NamedText } from '../../jobs/requests';
import { COLUMNS } from '../../rule-sheet/rule-columns';
import { columnNamed, namesColumns } from '../../table/typed-table';
import type { OwnPattern } from '../state';
import { Button } from './controls';
import { takenTable } from './dropped-table';
import { Grid } from './grid';
import type { GridKind } from './grid';
import type { Shared } from './page';

/** Files by what they are, until there is a pattern and its rules. */
type Chosen = { readonly [Name in keyof OwnPattern]?: NamedText | undefined };

/** Chooses the files, or goes back to the chart. */
export function OwnFiles({ state, change }: Shared) {
  const { own } = state;
  const [chosen, setChosen] = useState<Chosen>({});
  const [said, setSaid] = useState('');
  const files: Chosen = { ...own, ...chosen };
  const take = (next: Chosen): void => {
    setSaid('');
    const { pattern, rules, seams } = { ...files, ...next };
    if (pattern === undefined || rules === undefined) {
      setChosen({ ...chosen, ...next });
      return;
    }
    setChosen({});
    change.own({ pattern, rules, ...(seams === undefined ? {} : { seams }) }, '');
  };
  return (
    <section class="slip" aria-label="A pattern of your own">
      <h2>A pattern of your own</h2>
      <p>
        Grades pieces that you have by a rule sheet, in the place of a chart: two CSV sheets, or a
        DXF drawing with its rule table.
      </p>
      <p class="row">
        <Choice
          name="Pattern"
          file={files.pattern}
          onFile={(pattern) => take({ pattern })}
          onSaid={setSaid}
        />
        <Choice
          name="Rules"
          file={files.rules}
          onFile={(rules) => take({ rules })}
          onSaid={setSaid}
        />
        <Choice
          name="Seams, if any"
          file={files.seams}
          onFile={(seams) => take({ seams })}
          onSaid={setSaid}
        />
        {own !== undefined && (
          <Button onPress={() => change.own(undefined, '')}>Back to the chart</Button>
        )}
      </p>
      <p role="status">{said}</p>
    </section>
  );
}

function Choice({
  name,
  file,
  onFile,
  onSaid,
}: {
  readonly name: string;
  readonly file: NamedText | undefined;
  readonly onFile: (file: NamedText) => void;
  /** Gets the words of what cannot be read. */
  readonly onSaid: (words: string) => void;
}) {
  return (
    <label class="button">
      {name}
      {file === undefined ? '' : `: ${file.file}`}
      <input
        type="file"
        accept=".csv,.txt,.tsv,.dxf,.rul,text/csv"
        onChange={(event) => {
          const [taken] = event.currentTarget.files ?? [];
          if (taken === undefined) return;
          takenTable(taken).then(onFile, (error: unknown) => {
            onSaid(error instanceof Error ? error.message : String(error));
          });
        }}
      />
    </label>
  );
}

/** Columns of a rule sheet that say which cells a row has. */
const NAMING = ['piece', 'point', 'rule', 'size', 'axis'] as const;

const isRuleLine = (cells: readonly string[]): boolean => namesColumns(cells, COLUMNS);
const isNaming = (head: string): boolean => columnNamed(head, NAMING) !== undefined;

/** The rule sheet as a grid, and as text, both graded anew as they are typed. */
export function OwnRules({ change, own, refused }: Shared & { readonly own: OwnPattern }) {
  const { file, text } = own.rules;
  const onText = (next: string, about: string): void => {
    change.own({ ...own, rules: { file, text: next } }, `rules ${about}`);
  };
  // Sizes are columns where the axis of a row is named.
  const sizes = /\baxis\b/iu.test(text) ? 'size' : undefined;
  const kind: GridKind = {
    name: 'Cells of the rule sheet',
    tells: isRuleLine,
    isHeads: isRuleLine,
    column: sizes,
    row: 'row',
    isName: isNaming,
  };
  // A drawing goes with a rule table, which is no sheet of cells.
  const isSheet = !/\.dxf$/iu.test(own.pattern.file);
  const asText = (
    <label class="plain">
      <span class="file">{file}</span>
      <textarea
        rows={Math.min(24, text.split('\n').length + 1)}
        spellcheck={false}
        value={text}
        onInput={(event) => {
          onText(event.currentTarget.value, 'text');
        }}
      />
    </label>
  );
  return (
    <section class="slip chart" aria-label="Rules">
      <h2>Rules</h2>
      {isSheet ? (
        <>
          <Grid table={own.rules} kind={kind} refused={refused} doubts={[]} onText={onText} />
          <details>
            <summary>{file} as text, with the lines above its table</summary>
            {asText}
          </details>
        </>
      ) : (
        asText
      )}
    </section>
  );
}
