/** What a hint tells of a sheet: rows, questions, and on the last level the answer. */
import { useState } from 'preact/hooks';
import { UNIT_WORDS } from '../../units';
import { CHART_FILE } from '../lesson';
import type { Lesson } from '../state';
import type { AnswerView, MarkView, PieceView } from '../wish';
import { Choice } from './controls';
import { Derived } from './derived';
import type { Engine } from './engine-client';
import { PairOfSizes } from './pair-of-sizes';
import { Table } from './table';

/** As much as the level has. */
export function Answer({
  told: { wrong, blank, asks, answer },
  lesson,
  engine,
}: {
  readonly told: MarkView;
  readonly lesson: Lesson;
  readonly engine: Engine;
}) {
  return (
    <>
      {wrong.length > 0 && <p>Wrong: {wrong.join(', ')}</p>}
      {blank.length > 0 && <p>Blank: {blank.join(', ')}</p>}
      {asks.map((ask) => (
        <p>{ask}</p>
      ))}
      {answer !== undefined && <Told answer={answer} lesson={lesson} engine={engine} />}
    </>
  );
}

function Told({
  answer,
  lesson: { chart, style, base, set },
  engine,
}: {
  readonly answer: AnswerView;
  readonly lesson: Lesson;
  readonly engine: Engine;
}) {
  const { sizes, rows, slips, points, display } = answer;
  const [point, setPoint] = useState('');
  return (
    <>
      {slips.map(([words, advice]) => (
        <p>
          {words}. {advice}
        </p>
      ))}
      <Table
        caption={`What is right, in ${UNIT_WORDS[display.unit]}, and what was given where it is wrong`}
        heads={['row', ...sizes]}
        rows={rows}
      />
      <Outlines answer={answer} />
      <Choice
        label="derive step by step"
        value={point}
        options={[['', 'a point'], ...points.map((name) => [name, name] as const)]}
        onChoose={setPoint}
      />
      {point !== '' && (
        <Derived
          engine={engine}
          pattern={{
            chart: { text: chart, file: CHART_FILE },
            asked: { style, base, ...(set === undefined ? {} : { set }) },
          }}
          point={point}
        />
      )}
    </>
  );
}

/** The outline that the sheet makes over the one that is right, in one size. */
function Outlines({ answer: { outlines, sizes, display } }: { readonly answer: AnswerView }) {
  const [chosen, setChosen] = useState<string>();
  // Where most is off, until somebody chooses.
  const worst = outlines.toSorted((a, b) => apart(b.pieces) - apart(a.pieces))[0];
  const shown = outlines.find((one) => one.size === chosen) ?? worst;
  const size = shown?.size ?? '';
  return (
    <>
      <Choice
        label="your outline over the right one, size"
        value={size}
        options={sizes.map((one) => [one, one])}
        onChoose={setChosen}
      />
      {shown?.pieces.map((piece) => (
        <figure>
          <svg
            class="outlines"
            viewBox={viewBoxOf(piece)}
            role="img"
            aria-label={`The ${piece.name} of size ${size} as your sheet makes it over the right one; the table has what is off.`}
          >
            <PairOfSizes
              piece={piece}
              view={{ sizes: [RIGHT, YOURS], display }}
              pair={{ smaller: RIGHT, larger: YOURS }}
            />
          </svg>
          <figcaption>
            Right, and dashed as your sheet makes it; numbers in {UNIT_WORDS[display.unit]} are how
            far a corner is off.
          </figcaption>
        </figure>
      ))}
    </>
  );
}

const [RIGHT, YOURS] = ['right', 'yours'];

/** mm by which the outlines are apart at most along an axis. */
function apart(pieces: readonly PieceView[]): number {
  return Math.max(
    ...pieces.flatMap(({ sizes: [right, yours] }) =>
      (right?.coordinates ?? []).map((at, i) => Math.abs(at - (yours?.coordinates[i] ?? at))),
    ),
  );
}

/** mm around the outlines, for numbers beside their corners. */
const ROOM = 40;

function viewBoxOf({ sizes }: PieceView): string {
  const all = sizes.flatMap(({ coordinates }) => coordinates);
  const xs = all.filter((_, i) => i % 2 === 0);
  const ys = all.filter((_, i) => i % 2 === 1);
  const [left, top] = [Math.min(...xs) - ROOM, Math.min(...ys) - ROOM];
  return [left, top, Math.max(...xs) + ROOM - left, Math.max(...ys) + ROOM - top].join(' ');
}
