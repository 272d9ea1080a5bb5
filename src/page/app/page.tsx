/** The page: a table with the nest on it, and beside it what makes it. */
import { useCallback, useEffect, useMemo, useState } from 'preact/hooks';
import type { NamedText } from '../../jobs/requests';
import { withKnownBase } from '../chart-sizes';
import type { History } from '../history';
import { changed, historyOf, redone, undone } from '../history';
import type { Asked, Looks, OwnPattern, PageState } from '../state';
import type { Pattern, Refused, SkirtView, Spot } from '../wish';
import { Button } from './controls';
import { ChartSheet } from './chart-sheet';
import { Cloth } from './cloth';
import { Coverage } from './coverage';
import type { Engine } from './engine-client';
import { engineOfPage } from './engine-client';
import { Learning } from './learning';
import { Measures } from './measures';
import { NestSheet } from './nest-sheet';
import { OwnFiles, OwnRules } from './own-pattern';
import { Pictures } from './pictures';
import { Skirt } from './skirt';
import { TakeAway } from './take-away';
import { useTold } from './use-told';
import { Verdict } from './verdict';

/** What a part of the page may change; changes about the same thing are undone as one. */
export interface Change {
  readonly state: (next: (state: PageState) => PageState, about: string) => void;
  readonly asked: (next: Partial<Asked>, about: string) => void;
  /** Another chart, with a base that it has. */
  readonly chart: (chart: NamedText) => void;
  /** A pattern in the place of the chart, or none. */
  readonly own: (own: OwnPattern | undefined, about: string) => void;
  readonly looks: (next: Partial<Looks>) => void;
}

/** What every part of the page is given. */
export interface Shared {
  readonly state: PageState;
  readonly change: Change;
  readonly engine: Engine;
  /** The last skirt that could be graded; undefined before the first. */
  readonly view: SkirtView | undefined;
  /** Why the state as it stands cannot be graded, if it cannot. */
  readonly refused: Refused | undefined;
  readonly pattern: Pattern;
}

/** The whole page; `opened` is the state that stands in its file. */
export function Page({ opened }: { readonly opened: PageState }) {
  const [history, setHistory] = useState<History<PageState>>(() => historyOf(opened));
  const [fault, setFault] = useState<string>();
  const engine = useMemo(() => engineOfPage(setFault), []);
  const change = useChange(setHistory);
  const state = history.now;
  const { chart, styleFile, project, asked, own } = state;
  const pattern = useMemo<Pattern>(
    () => ({
      chart,
      asked,
      ...(styleFile === undefined ? {} : { styleFile }),
      ...(project === undefined ? {} : { project }),
      ...(own === undefined ? {} : { own }),
    }),
    [chart, styleFile, project, asked, own],
  );
  const { told: view, refused } = useTold(engine, { kind: 'skirt', pattern });
  const [spot, setSpot] = useState<Spot>();
  useUndoKeys(setHistory);
  const shared: Shared = { state, change, engine, view, refused, pattern };
  return (
    <>
      <Head
        title={view?.title ?? (own?.pattern ?? chart).file}
        history={history}
        setHistory={setHistory}
      />
      <Verdict
        {...shared}
        fault={fault}
        onSpot={(next) => {
          setSpot(next);
          document.querySelector('.frame')?.scrollIntoView({ block: 'nearest' });
        }}
      />
      <main class="table">
        <div class="laid">
          <NestSheet {...shared} pinned={spot} onPin={setSpot} />
          {own === undefined ? <ChartSheet {...shared} /> : <OwnRules {...shared} own={own} />}
          <Measures {...shared} />
          <Pictures {...shared} />
          <Cloth {...shared} />
          {own === undefined && <Coverage {...shared} />}
          <Learning {...shared} />
        </div>
        <div class="beside">
          {own === undefined && <Skirt {...shared} />}
          <OwnFiles {...shared} />
          <TakeAway {...shared} />
        </div>
      </main>
    </>
  );
}

/** The title of the skirt, and what undoes and redoes. */
function Head({
  title,
  history,
  setHistory,
}: {
  readonly title: string;
  readonly history: History<PageState>;
  readonly setHistory: (next: (history: History<PageState>) => History<PageState>) => void;
}) {
  return (
    <header class="head">
      <h1>{title}</h1>
      <p class="undoing">
        <Button disabled={history.past.length === 0} onPress={() => setHistory(undone)}>
          Undo
        </Button>
        <Button disabled={history.future.length === 0} onPress={() => setHistory(redone)}>
          Redo
        </Button>
      </p>
    </header>
  );
}

function useChange(
  setHistory: (next: (history: History<PageState>) => History<PageState>) => void,
): Change {
  return useMemo(() => {
    const state: Change['state'] = (next, about) => {
      setHistory((history) => changed(history, next(history.now), about));
    };
    return {
      state,
      asked: (next, about) => {
        state((now) => ({ ...now, asked: { ...now.asked, ...next } }), about);
      },
      chart: (chart) => {
        state((now) => ({ ...now, chart, asked: withKnownBase(now.asked, chart) }), '');
      },
      own: (own, about) => {
        state(({ own: _, ...now }) => (own === undefined ? now : { ...now, own }), about);
      },
      // How a nest is looked at is nothing to undo.
      looks: (next) => {
        setHistory((history) => ({
          ...history,
          now: { ...history.now, looks: { ...history.now.looks, ...next } },
        }));
      },
    };
  }, [setHistory]);
}

/** Undo and redo by the usual keys, but for fields, which undo their own letters. */
function useUndoKeys(
  setHistory: (next: (history: History<PageState>) => History<PageState>) => void,
): void {
  const onKey = useCallback(
    (event: KeyboardEvent) => {
      if (!(event.ctrlKey || event.metaKey) || event.key.toLowerCase() !== 'z') return;
      if (event.target instanceof HTMLInputElement && event.target.type === 'text') return;
      event.preventDefault();
      setHistory(event.shiftKey ? redone : undone);
    },
    [setHistory],
  );
  useEffect(() => {
    document.addEventListener('keydown', onKey);
    return () => {
      document.removeEventListener('keydown', onKey);
    };
  }, [onKey]);
}
