/** What the skirt measures in every size, and by how much its seams are apart. */
import { UNIT_WORDS, showNumber } from '../../units';
import type { MeasureView } from '../wish';
import type { Shared } from './page';
import { Table } from './table';
import { otherDisplay, spaced } from './words';

/** Tables in the unit of the chart and in the other. */
export function Measures({ view }: Shared) {
  if (view === undefined) return null;
  const { sizes, display, measures, seams } = view;
  const rowsOf = (own: readonly MeasureView[], unit = display): string[][] =>
    own.map(({ name, values }) => [
      spaced(name),
      ...values.map((value) => (value === null ? 'no limit' : showNumber(value, unit))),
    ]);
  const other = otherDisplay(display);
  const table = (caption: string, rows: string[][]) => (
    <Table caption={caption} heads={['size', ...sizes]} rows={rows} />
  );
  return (
    <section class="slip" aria-label="Finished measurements">
      <h2>{measures.length > 0 ? 'Finished skirt' : 'Seams'}</h2>
      {measures.length > 0 && (
        <>
          {table(`Finished measurements in ${UNIT_WORDS[display.unit]}`, rowsOf(measures))}
          <details>
            <summary>The same in {UNIT_WORDS[other.unit]}</summary>
            {table(`Finished measurements in ${UNIT_WORDS[other.unit]}`, rowsOf(measures, other))}
          </details>
        </>
      )}
      <details open={measures.length === 0}>
        <summary>Seams</summary>
        {table(
          `Seams: how much longer the first side is, in ${UNIT_WORDS[display.unit]}`,
          rowsOf(seams),
        )}
      </details>
    </section>
  );
}
