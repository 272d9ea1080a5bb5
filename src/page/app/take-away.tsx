/** What can be taken away: drawings, tables, sheets to print, exchange files, the project, the page itself. */
import { useState } from 'preact/hooks';
import type { NamedText } from '../../jobs/requests';
import { BOOKLETS } from '../../print/booklet/booklet';
import { SHEETS } from '../../print/paper';
import { projectText } from '../project-text';
import type { PageState } from '../state';
import type { Wanted } from '../wish';
import { Button, Choice, Tick } from './controls';
import type { Shared } from './page';
import { pageWith, save, stemOf, zipped } from './save';

/** Papers that have names; a roll is asked for by its width. */
const PAPERS = [...SHEETS.map(({ name }) => name), 'projector'];

/** Nothing printed, nothing exchanged: the drawings and tables that every skirt has. */
const LEAST: Wanted = { exports: [], papers: [], booklet: 'full' };

/** The files of the skirt as it stands. */
export function TakeAway({ state, engine, pattern, refused, view }: Shared) {
  const [wanted, setWanted] = useState(LEAST);
  const [said, setSaid] = useState('');
  const { file, text } = state.own?.pattern ?? state.chart;
  const stem = stemOf(file);
  const encode = (words: string) => new TextEncoder().encode(words);
  const take = (): void => {
    setSaid('Making the files\u2026');
    engine.ask({ kind: 'take', pattern, wanted }, (answer) => {
      if ('refused' in answer) {
        setSaid(answer.refused.message);
        return;
      }
      const own = inputsOf(state, wanted).map(({ file: name, text: words }) => ({
        name,
        bytes: encode(words),
      }));
      save(`${stem}.zip`, zipped([...answer.told, ...own]), 'application/zip');
      setSaid(`${stem}.zip has ${answer.told.length + own.length} files.`);
    });
  };
  return (
    <section class="slip" aria-label="Take away">
      <h2>Take away</h2>
      <p>
        Nest, sizes, tables and report, and{' '}
        {state.own === undefined ? 'the chart and a project file' : 'the sheets of the pattern'}, in
        one zip. Besides them:
      </p>
      <WantedChoice exports={view?.exports ?? []} wanted={wanted} onWanted={setWanted} />
      <p class="row">
        <Button class="take" disabled={view === undefined || refused !== undefined} onPress={take}>
          Take all as one zip
        </Button>
        <Button onPress={() => save(`${stem}.html`, pageWith(state), 'text/html')}>
          Save this page as it is
        </Button>
        <Button onPress={() => save(file, text, 'text/csv')}>
          {state.own === undefined ? 'Chart' : 'Pattern'}
        </Button>
      </p>
      <p role="status">{said}</p>
    </section>
  );
}

/** What the skirt is made of: chart, project and style file, or the sheets of a pattern. */
function inputsOf(state: PageState, wanted: Wanted): readonly NamedText[] {
  const { own, chart, styleFile } = state;
  if (own !== undefined) {
    const given = [own.pattern, own.rules, ...(own.seams === undefined ? [] : [own.seams])];
    // A result may have the name of a file that was given.
    return given.map(({ file, text }) => ({ file: `given/${file}`, text }));
  }
  return [
    chart,
    { file: 'skirt.csv', text: projectText(state, wanted) },
    ...(styleFile === undefined ? [] : [styleFile]),
  ];
}

/** What each export is, in a few words. */
const EXPORT_WORDS: Readonly<Record<string, string>> = {
  spec: 'spec and grade sheet',
  breaks: 'where steps change',
  moves: 'moves as arrows',
  card: 'cutting card',
  dxf: 'DXF and rule table',
  fabric: 'cloth to buy, and lays',
};

function WantedChoice({
  exports,
  wanted,
  onWanted,
}: {
  readonly exports: readonly string[];
  readonly wanted: Wanted;
  readonly onWanted: (wanted: Wanted) => void;
}) {
  const ticks = (field: 'exports' | 'papers', names: readonly string[]) =>
    names.map((name) => (
      <Tick
        isOn={wanted[field].includes(name)}
        onTick={(isOn) => {
          const others = wanted[field].filter((other) => other !== name);
          // In the order of the list, as the command line would write them.
          const next = names.filter((one) => others.includes(one) || (isOn && one === name));
          onWanted({ ...wanted, [field]: [...next, ...others.filter(isRoll)] });
        }}
      >
        {EXPORT_WORDS[name] ?? name}
      </Tick>
    ));
  return (
    <>
      <div class="row" role="group" aria-label="Files besides">
        {ticks('exports', exports)}
      </div>
      <div class="row" role="group" aria-label="PDF on paper">
        <span>PDF on</span>
        {ticks('papers', PAPERS)}
        <Roll wanted={wanted} onWanted={onWanted} />
        <Choice
          label="booklet"
          value={wanted.booklet}
          options={BOOKLETS.map((name) => [name, name])}
          onChoose={(booklet) => onWanted({ ...wanted, booklet })}
        />
      </div>
    </>
  );
}

/** How a roll is asked for: by this and its width. */
const ROLL = 'roll=';

function isRoll(paper: string): boolean {
  return paper.startsWith(ROLL);
}

/** A roll by its width, behind the papers that have names; none while the field is empty. */
function Roll({
  wanted,
  onWanted,
}: {
  readonly wanted: Wanted;
  readonly onWanted: (wanted: Wanted) => void;
}) {
  const { papers } = wanted;
  return (
    <label class="choice">
      roll, as wide as{' '}
      <input
        type="text"
        size={6}
        placeholder="36in"
        value={papers.find(isRoll)?.slice(ROLL.length) ?? ''}
        onInput={(event) => {
          const width = event.currentTarget.value.trim();
          const named = papers.filter((paper) => !isRoll(paper));
          onWanted({ ...wanted, papers: width === '' ? named : [...named, ROLL + width] });
        }}
      />
    </label>
  );
}
