/** A pattern that somebody has already: its files in the place of chart and style, its rules to be edited. */
import { useState } from 'preact/hooks';
import type { NamedText } from '../../jobs/requests';
import type { OwnPattern } from '../state';
import { Button } from './controls';
import { takenTable } from './dropped-table';
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

/** The rule sheet as text, which is graded anew as it is typed. */
export function OwnRules({ change, own, refused }: Shared & { readonly own: OwnPattern }) {
  const { file, text } = own.rules;
  const isWrong = refused?.place.file === file;
  return (
    <section class="slip chart" aria-label="Rules">
      <h2>Rules</h2>
      <label class="plain">
        <span class="file">{file}</span>
        <textarea
          rows={Math.min(24, text.split('\n').length + 1)}
          spellcheck={false}
          value={text}
          aria-invalid={isWrong}
          onInput={(event) => {
            const rules = { file, text: event.currentTarget.value };
            change.own({ ...own, rules }, 'rules');
          }}
        />
      </label>
      {isWrong && <p class="refusal">{refused.message}</p>}
    </section>
  );
}
