/** An exercise: a chart, a sheet that is filled in here, and hints before answers. */
import { useState } from 'preact/hooks';
import { EXERCISE_UNITS } from '../../study/exercise/exercise-chart';
import { DIFFICULTIES, LESSONS } from '../../study/exercise/lessons';
import type { HintLevel } from '../../study/mark/hint-levels';
import { CHART_FILE, SHEET_FILE } from '../lesson';
import type { AskedExercise, Lesson } from '../state';
import { Answer } from './answer';
import { Button, Choice, Later } from './controls';
import { gridOf } from '../cell-grid';
import { Grid } from './grid';
import type { Shared } from './page';
import { RULE_GRID } from './rule-grid';
import { save } from './save';
import { Table } from './table';
import { useTold } from './use-told';

/** Set once it is opened and asked for; it is kept with the page. */
export function Learning(props: Shared) {
  return (
    <Later name="An exercise" isOpen={props.state.lesson !== undefined}>
      {() => <Opened {...props} />}
    </Later>
  );
}

const FIRST: AskedExercise = { seed: 1, difficulty: 'even', unit: 'in' };

function Opened(props: Shared) {
  const { state, change, engine } = props;
  const [asked, setAsked] = useState<AskedExercise>(state.lesson ?? FIRST);
  const [said, setSaid] = useState('');
  const begin = (): void => {
    const { seed, difficulty, unit } = asked;
    engine.ask({ kind: 'exercise', asked: { seed, difficulty, unit } }, (answer) => {
      if ('refused' in answer) {
        setSaid(answer.refused.message);
        return;
      }
      setSaid('');
      change.state((now) => ({ ...now, lesson: answer.told }), '');
    });
  };
  return (
    <>
      <div class="row" role="group" aria-label="Which exercise">
        <label class="choice">
          number{' '}
          <input
            type="number"
            min={0}
            value={asked.seed}
            onInput={(event) => {
              setAsked({ ...asked, seed: event.currentTarget.valueAsNumber });
            }}
          />
        </label>
        <Choice
          label="practices"
          value={asked.difficulty}
          options={DIFFICULTIES.map((one) => [one, LESSONS[one].practices])}
          onChoose={(chosen) => {
            const difficulty = DIFFICULTIES.find((one) => one === chosen) ?? FIRST.difficulty;
            setAsked({ ...asked, difficulty });
          }}
        />
        <Choice
          label="unit"
          value={asked.unit}
          options={EXERCISE_UNITS.map((one) => [one, one])}
          onChoose={(chosen) => {
            setAsked({ ...asked, unit: EXERCISE_UNITS.find((one) => one === chosen) ?? 'in' });
          }}
        />
        <Button onPress={begin}>Set the exercise</Button>
      </div>
      {said !== '' && <p class="trouble">{said}</p>}
      {state.lesson !== undefined && <Sheet {...props} lesson={state.lesson} />}
    </>
  );
}

const STEPS: readonly (readonly [level: HintLevel, words: string])[] = [
  [1, 'How many are wrong'],
  [2, 'Which rows'],
  [3, 'Which question to ask'],
  [4, 'The answer'],
];

/** The chart, the sheet and what was told of it. */
function Sheet({ change, engine, lesson }: Shared & { readonly lesson: Lesson }) {
  const { chart, sheet, task, hint, reached } = lesson;
  const set = (next: Partial<Lesson>, about: string): void => {
    change.state((now) => ({ ...now, lesson: { ...lesson, ...next } }), about);
  };
  // The hint is of the sheet as it was, and stays while that is mended.
  const wanted = hint && { kind: 'mark' as const, lesson: { ...lesson, sheet: hint.sheet } };
  const { told, refused, wish } = useTold(engine, wanted);
  const isNow = JSON.stringify(wish) === JSON.stringify(wanted);
  const [heads = [], ...rows] = gridOf(chart, CHART_FILE, () => false)?.rows ?? [];
  return (
    <>
      <p>{task}</p>
      <Table caption="The chart of the exercise" heads={heads} rows={rows} />
      <Grid
        table={{ text: sheet, file: SHEET_FILE }}
        kind={{ ...RULE_GRID, name: 'The sheet of the exercise' }}
        refused={hint?.sheet === sheet ? refused : undefined}
        doubts={[]}
        onText={(next, about) => {
          set({ sheet: next }, `exercise ${about}`);
        }}
      />
      <div class="row" role="group" aria-label="Hints, one after another">
        {STEPS.map(([level, words]) => (
          <Button
            disabled={level > reached + 1}
            onPress={() => set({ hint: { level, sheet }, reached: Math.max(reached, level) }, '')}
          >
            {words}
          </Button>
        ))}
        <Button class="quiet" onPress={() => save(SHEET_FILE, sheet, 'text/csv')}>
          Save the sheet
        </Button>
      </div>
      <p class="line" role="status" aria-live="polite">
        {hint === undefined
          ? ''
          : refused !== undefined
            ? refused.message
            : told !== undefined && isNow
              ? told.line
              : 'Reading the sheet\u2026'}
        {hint !== undefined && hint.sheet !== sheet && ' The sheet has changed since; ask again.'}
      </p>
      {told !== undefined && isNow && refused === undefined && (
        <Answer told={told} lesson={lesson} engine={engine} />
      )}
    </>
  );
}
