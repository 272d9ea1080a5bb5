/** Pictures of the numbers, each with its table beside it. */
import { UNIT_WORDS, fromMillimeters, inYards, showNumber, trimmed, yardsTold } from '../../units';
import type { LengthDisplay } from '../../units';
import type { PictureView } from '../wish';
import type { Shared } from './page';
import { Table } from './table';

/** Units of the drawing, and the room around its lines. */
const [WIDTH, HEIGHT, LEFT, BELOW, ABOVE] = [600, 240, 46, 28, 12];
/** Type of the labels in the look of the page, and on narrow screens, where the drawing is small. */
const [TYPE, NARROW_TYPE] = [12, 20];
/** Width of a letter as a share of its type. No tolerance: digits of Arimo are 0.556 wide. */
const LETTER = 0.56;
/** Lines across, at most. */
const MOST_LINES = 6;

/** Every picture that the skirt has. */
export function Pictures({ view }: Shared) {
  if (view === undefined || view.pictures.length === 0) return null;
  return (
    <section class="slip" aria-label="Pictures of the numbers">
      <h2>Numbers</h2>
      <div class="figures">
        {view.pictures.map((picture) => (
          <Picture picture={picture} display={view.display} />
        ))}
      </div>
    </section>
  );
}

/** Lines by size with their legend and their table. */
export function Picture({
  picture,
  display,
}: {
  readonly picture: PictureView;
  readonly display: LengthDisplay;
}) {
  const { title, labels, series } = picture;
  const all = series.flatMap(({ values }) => values.filter((value) => value !== null));
  const scale = scaleOf(picture, display);
  const ticks = ticksOf(all.map(scale.of));
  const [low = 0, high = 1] = [ticks[0], ticks.at(-1)];
  const x = (i: number): number => LEFT + ((i + 0.5) * (WIDTH - LEFT)) / labels.length;
  const y = (value: number): number =>
    ABOVE + ((high - value) / (high - low)) * (HEIGHT - ABOVE - BELOW);
  const names = series.map(({ name }) => name).join(', ');
  return (
    <figure>
      <figcaption>
        {title}, in {scale.word}
      </figcaption>
      <svg viewBox={`0 0 ${WIDTH} ${HEIGHT}`} role="img" aria-label={`${title}: ${names} by size`}>
        {ticks.map((tick) => (
          <>
            <path class="across" d={`M${LEFT} ${y(tick)}H${WIDTH}`} />
            <text class="tick-words" x={LEFT - 6} y={y(tick) + 4} text-anchor="end">
              {trimmed(tick, 3)}
            </text>
          </>
        ))}
        <Labels labels={labels} x={x} />
        {series.map(({ values }, k) => (
          <path class={`series series-${k}`} d={lineOf(values, scale.of, x, y)} />
        ))}
      </svg>
      <Legend series={series} />
      <details>
        <summary>As a table</summary>
        <Table
          caption={`${title}, in ${scale.word}`}
          heads={['size', ...labels]}
          rows={series.map(({ name, values }) => [
            name,
            ...values.map((value) => (value === null ? '' : scale.show(value))),
          ])}
        />
      </details>
    </figure>
  );
}

/** Below the lines; labels that would run into each other leave some between them out. */
function Labels({
  labels,
  x,
}: {
  readonly labels: readonly string[];
  readonly x: (i: number) => number;
}) {
  const longest = Math.max(...labels.map((label) => label.length));
  const every = (type: number): number =>
    Math.ceil((((longest + 1) * LETTER * type) / (WIDTH - LEFT)) * labels.length);
  return labels.map((label, i) => {
    if (i % every(TYPE) !== 0) return null;
    const look = i % every(NARROW_TYPE) === 0 ? 'tick-words' : 'tick-words wide-only';
    return (
      <text class={look} x={x(i)} y={HEIGHT - 8} text-anchor="middle">
        {label}
      </text>
    );
  });
}

/** How lengths of a picture are told. */
interface Scale {
  readonly word: string;
  readonly of: (mm: number) => number;
  readonly show: (mm: number) => string;
}

function scaleOf({ unit }: PictureView, display: LengthDisplay): Scale {
  if (unit === 'yd') return { word: 'yards', of: inYards, show: (mm) => yardsTold(inYards(mm)) };
  const own = unit === undefined ? display : { ...display, unit };
  return {
    word: UNIT_WORDS[own.unit],
    of: (mm) => fromMillimeters(mm, own.unit),
    show: (mm) => showNumber(mm, own),
  };
}

/** Each line with its name and where its numbers come from. */
function Legend({ series }: Pick<PictureView, 'series'>) {
  return (
    <ul class="legend">
      {series.map(({ name, source }, k) => (
        <li>
          <svg width="30" height="8" aria-hidden="true">
            <path class={`series series-${k}`} d="M1 4H29" />
          </svg>{' '}
          {name}
          {source === undefined ? '' : `: ${source}`}
        </li>
      ))}
    </ul>
  );
}

/** A line through the values; where one is missing the pen is lifted. */
function lineOf(
  values: readonly (number | null)[],
  of: (mm: number) => number,
  x: (i: number) => number,
  y: (value: number) => number,
): string {
  let isDown = false;
  return values
    .map((value, i) => {
      const command = isDown ? 'L' : 'M';
      isDown = value !== null;
      // A value alone is a dot, by the round ends of its line.
      return value === null ? '' : `${command}${x(i)} ${y(of(value))}h0.01`;
    })
    .join('');
}

/** Round numbers around all values, at most six. */
function ticksOf(values: readonly number[]): readonly number[] {
  const [least, most] = [Math.min(...values), Math.max(...values)];
  const span = most - least || Math.abs(most) || 1;
  const rough = 10 ** Math.floor(Math.log10(span / MOST_LINES));
  const step =
    [1, 2, 5, 10, 20].map((n) => n * rough).find((n) => span / n <= MOST_LINES - 2) ?? span;
  const first = Math.floor(least / step);
  const last = Math.max(first + 1, Math.ceil(most / step));
  return Array.from({ length: last - first + 1 }, (_, i) => (first + i) * step);
}
