/** Numbers of a graded skirt that are seen better than read: how the chart grows, ease, the step allowed. */
import type { Finding } from '../../check/finding';
import { findRow } from '../../chart/size-chart';
import type { GradeResult } from '../../jobs/grade-result';
import type { PictureView, SeriesView } from '../wish';

/** Those that a skirt has; lengths in mm. */
export function pictures(result: GradeResult): readonly PictureView[] {
  const all = [...growth(result), ...ease(result), ...step(result)];
  return all.filter(({ series }) => series.length > 0);
}

/** Steps of waist and hip, beside what published tables give the hip for the same growth of the waist. */
function growth({ chart, findings }: GradeResult): readonly PictureView[] {
  if (chart === undefined || chart.sizes.length < 2) return [];
  const labels = chart.sizes.slice(1).map((size, i) => `${chart.sizes[i] ?? ''}-${size}`);
  const valuesOf = (name: string): readonly (number | null)[] => findRow(chart, name)?.values ?? [];
  const [waist, hip] = [valuesOf('waist_girth'), valuesOf('hip_girth')];
  const tables = findings.filter(({ check }) => check === 'step-against-standard');
  const published = [...new Set(tables.map(({ subject }) => subject))].map((subject) =>
    seriesOf(
      `hip after ${subject}`,
      tables.filter((one) => one.subject === subject),
      labels,
      'expected',
    ),
  );
  return [
    {
      title: 'Growth from size to size',
      labels,
      series: [
        { name: 'waist', values: differences(waist) },
        { name: 'hip', values: differences(hip) },
        ...published,
      ],
    },
    {
      title: 'Hip less waist',
      labels: chart.sizes,
      series: [{ name: 'drop', values: hip.map((value, i) => less(value, waist[i])) }],
    },
  ];
}

/** The finished girths over those of the body. */
function ease({ chart, range, findings }: GradeResult): readonly PictureView[] {
  const labels = range.sizes.map(({ label }) => label);
  return ['waist', 'hip'].flatMap((name) => {
    const own = findings.filter(
      ({ check, subject }) => check === 'finished-girth' && subject === name,
    );
    const body = chart && findRow(chart, `${name}_girth`);
    if (own.length === 0 || body === undefined) return [];
    return {
      title: `Finished ${name} over the body`,
      labels,
      series: [
        { name: 'body', values: body.values },
        seriesOf('finished', own, labels, 'measured'),
      ],
    };
  });
}

/** The step that the skirt allows, beside the one that walking wants. */
function step({ range, findings }: GradeResult): readonly PictureView[] {
  const own = findings.filter(
    ({ check, measured }) => check === 'stride' && measured !== undefined,
  );
  const labels = range.sizes.map(({ label }) => label);
  if (own.length === 0) return [];
  return [
    {
      title: 'Step that the skirt allows',
      labels,
      series: [
        { name: 'allowed', values: seriesOf('', own, labels, 'measured').values },
        seriesOf('wanted', own, labels, 'expected'),
      ],
    },
  ];
}

/** What findings say at each label, with the source that they have it from. */
function seriesOf(
  name: string,
  findings: readonly Finding[],
  labels: readonly string[],
  field: 'measured' | 'expected',
): SeriesView {
  return {
    name,
    values: labels.map((label) => {
      const value = findings.find(({ size }) => size === label)?.[field];
      return value !== undefined && Number.isFinite(value) ? value : null;
    }),
    ...(findings[0] === undefined ? {} : { source: findings[0].source }),
  };
}

function differences(values: readonly (number | null)[]): readonly (number | null)[] {
  return values.slice(1).map((value, i) => less(value, values[i]));
}

function less(a: number | null, b: number | null | undefined): number | null {
  return a === null || b === null || b === undefined ? null : a - b;
}
