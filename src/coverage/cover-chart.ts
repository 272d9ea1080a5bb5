/** Whom a chart's sizes fit: the chart, a style and a crowd in, shares and changes out. */
import { readChart } from '../chart/read-chart';
import type { SizeChart } from '../chart/size-chart';
import { marketValue, both } from '../draft/market-value';
import { InputError } from '../errors';
import type { GradeRequest } from '../jobs/requests';
import { publishedTable, publishedTables } from '../standards/published-tables';
import { parseLength } from '../table/number-cell';
import type { Change } from './changes';
import { bestChanges } from './changes';
import type { Coverage, Crowd } from './coverage';
import { coverageOf } from './coverage';
import type { FitRules, FittedSize } from '../bodies/fit';
import type { FitRequest } from '../bodies/fit-rules';
import { fitRules, sizeBodies } from '../bodies/fit-rules';
import type { SizeBody } from '../bodies/fit-rules';
import { fittedSize } from '../bodies/fit';
import type { BivariateNormal, Population } from './population';
import { DEFAULT_POPULATION, population } from './population';
import { suggestedSizes } from './suggest';
import type { Survey } from './survey';
import { normalOf, readSurvey } from './survey';

/** What is asked of a chart and a crowd. */
export interface CoverRequest extends FitRequest, Pick<GradeRequest, 'chart' | 'file'> {
  /** A list of bodies instead of a population. */
  readonly bodies?: { readonly text: string; readonly file: string };
  /** The column of the list that says how many people a body stands for. */
  readonly weights?: string;
  /** The id of a population; `us-army-women-1988` if absent. */
  readonly population?: string;
  /** Sizes of a range to propose. */
  readonly suggest?: number;
}

/** A range and whom it serves. */
export interface CoveredRange {
  readonly name: string;
  readonly sizes: readonly FittedSize[];
  readonly coverage: Coverage;
}

/** The coverage of a chart, and of what it may be held against. */
export interface ChartCoverage {
  readonly chart: SizeChart;
  readonly style: string;
  readonly rules: FitRules;
  readonly source: Population | Survey;
  readonly crowd: Crowd;
  readonly normal: BivariateNormal;
  readonly range: CoveredRange;
  /** For a survey: the same from the normal that would stand for it. */
  readonly byNormal: Coverage | undefined;
  /** What wins most first; none for a chart of one size. */
  readonly changes: readonly Change[];
  /** Standards and trade tables under the same rules, the highest share first. */
  readonly published: readonly CoveredRange[];
  readonly suggested: CoveredRange | undefined;
}

/** By what girths of a proposed range are told apart. */
const GRID = both('1 cm', '1/2 in');

/** Sizes that may be proposed at most. The engine's own figure. */
const MOST_SUGGESTED = 30;
/** How many may be proposed, in words. */
export const SUGGESTED = `a whole number from 2 to ${MOST_SUGGESTED}`;

/** Holds a chart against a crowd. Throws InputError for what cannot be read or used. */
export function coverChart(request: CoverRequest): ChartCoverage {
  const chart = readChart(request.chart, request.file ?? 'chart');
  const source = sourceOf(request);
  const crowd: Crowd =
    'bodies' in source
      ? { kind: 'bodies', bodies: source.bodies }
      : { kind: 'normal', normal: source };
  const normal = crowd.kind === 'normal' ? crowd.normal : normalOf(crowd.bodies);
  const { rules, style } = fitRules(chart, request);
  const grid = parseLength(marketValue(GRID, chart.unit), chart.unit) ?? NaN;
  const covered = (name: string, bodies: readonly SizeBody[]): CoveredRange => {
    const sizes = bodies.map((size) => fittedSize(size, rules));
    return { name, sizes, coverage: coverageOf(crowd, sizes) };
  };
  const bodies = sizeBodies(chart);
  const range = covered(chart.file, bodies);
  return {
    ...{ chart, style, rules, source, crowd, normal, range },
    byNormal:
      crowd.kind === 'normal' ? undefined : coverageOf({ kind: 'normal', normal }, range.sizes),
    changes: bodies.length < 2 ? [] : bestChanges(crowd, bodies, rules, grid),
    published: tables()
      .map(({ name, bodies: own }) => covered(name, own))
      .sort((a, b) => b.coverage.served - a.coverage.served),
    suggested:
      request.suggest === undefined
        ? undefined
        : covered(
            'suggested',
            suggestedSizes(crowd, normal, suggestedCount(request.suggest), rules, grid),
          ),
  };
}

function sourceOf({ bodies, weights, population: id }: CoverRequest): Population | Survey {
  if (bodies === undefined) {
    if (weights === undefined) return population(id ?? DEFAULT_POPULATION);
    throw new InputError('bad-option', {
      what: 'weights stand in a list of bodies',
      allowed: 'together with a list of bodies',
      got: weights,
      place: { field: 'weights' },
    });
  }
  if (id === undefined) return readSurvey(bodies.text, bodies.file, weights);
  throw new InputError('bad-option', {
    what: 'a list of bodies is a population of its own',
    allowed: 'a list of bodies, or the name of a population',
    got: id,
    place: { field: 'population' },
  });
}

function suggestedCount(count: number): number {
  if (Number.isInteger(count) && count >= 2 && count <= MOST_SUGGESTED) return count;
  throw new InputError('bad-option', {
    what: 'the number of sizes to propose is not usable',
    allowed: SUGGESTED,
    got: `${count}`,
    place: { field: 'suggest' },
  });
}

/** Every published table that is one of sizes. */
function tables(): readonly { readonly name: string; readonly bodies: readonly SizeBody[] }[] {
  return publishedTables()
    .filter(({ kind, unusable }) => kind !== 'survey' && unusable === undefined)
    .map(({ id }) => {
      const { sizes, waist, hip } = publishedTable(id);
      return {
        name: id,
        bodies: sizes.map((label, i) => ({
          label,
          waist: waist.values[i] ?? NaN,
          hip: hip.values[i] ?? NaN,
        })),
      };
    });
}
