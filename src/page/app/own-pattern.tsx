/** A pattern that somebody has already: its files in the place of chart and style, its rules to be edited. */
import { useState } from 'preact/hooks';
import type { NamedText } from '../../jobs/requests';
import type { OwnPattern } from '../state';
import { Button } from './controls';
import { Grid } from './grid';
import type { GridKind } from './grid';
import type { Shared } from './page';
import { RULE_GRID } from './rule-grid';
import { FileButton } from './taken-file';

/** Files by what they are, until there is a pattern and its rules. */
type Chosen = { readonly [Name in keyof OwnPattern]?: NamedText | undefined };

const WORDS = { pattern: 'Pattern', rules: 'Rules', seams: 'Seams, if any' } as const;

/** Chooses the files, or goes back to the chart. */
export function OwnFiles({ state, change }: Shared) {
  const { own } = state;
  const [chosen, setChosen] = useState<Chosen>({});
  const files: Chosen = { ...own, ...chosen };
  const take = (next: Chosen): void => {
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
        {(['pattern', 'rules', 'seams'] as const).map((part) => (
          <FileButton endings=",.dxf,.rul" onFile={(file) => take({ [part]: file })}>
            {WORDS[part]}
            {files[part] === undefined ? '' : `: ${files[part].file}`}
          </FileButton>
        ))}
        {own !== undefined && (
          <Button onPress={() => change.own(undefined, '')}>Back to the chart</Button>
        )}
      </p>
    </section>
  );
}

/** The rule sheet as a grid, and as text, both graded anew as they are typed. */
export function OwnRules({ change, own, refused }: Shared & { readonly own: OwnPattern }) {
  const { file, text } = own.rules;
  const onText = (next: string, about: string): void => {
    change.own({ ...own, rules: { file, text: next } }, `rules ${about}`);
  };
  // Sizes are columns where the axis of a row is named.
  const sizes = /\baxis\b/iu.test(text) ? 'size' : undefined;
  const kind: GridKind = {
    ...RULE_GRID,
    ...{ name: 'Cells of the rule sheet', column: sizes, row: 'row' },
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
