/** A survey of somebody's own: a list of bodies as a crowd. */
import { bodyChart, readBodyList } from '../bodies/body-list';
import { isOfOneBody } from '../bodies/draft-bodies';
import { findRow } from '../chart/size-chart';
import { InputError } from '../errors';
import { snakeCase } from '../table/label';
import { listedNames } from '../table/near-names';
import { parseNumberCell } from '../table/number-cell';
import type { WeightedBody } from './coverage';
import type { BivariateNormal, Spread } from './population';

/** Bodies with the weights that were asked for, and how many could not be used. */
export interface Survey {
  readonly file: string;
  readonly bodies: readonly WeightedBody[];
  /** Bodies that were set aside: no waist or hip, no weight, or no adult's. */
  readonly setAside: number;
  /** The column of weights; undefined where every body counts once. */
  readonly weights: string | undefined;
}

/**
 * Reads a list of bodies; `weights` names the column that says how many people each stands for. Throws
 * InputError for a list that cannot be used, and `column-unknown` for a column that is not there.
 */
export function readSurvey(text: string, file: string, weights?: string): Survey {
  const list = readBodyList(text, file);
  const column = weights === undefined ? -1 : weightColumn(list.columns, weights, file);
  const bodies: WeightedBody[] = [];
  for (const entry of list.entries) {
    try {
      const chart = bodyChart(list, entry);
      const girth = (name: string): number => findRow(chart, name)?.values[0] ?? NaN;
      const weight = column < 0 ? 1 : weightOf(entry.cells[column]?.text ?? '');
      if (weight !== undefined)
        bodies.push({ waist: girth('waist_girth'), hip: girth('hip_girth'), weight });
    } catch (error) {
      if (!(error instanceof InputError) || !isOfOneBody(error)) throw error;
    }
  }
  if (bodies.length < 2)
    throw new InputError('cell-missing', {
      what: 'the survey has too few bodies whose waist and hip can be read',
      allowed: 'two bodies or more',
      got: `${bodies.length}`,
      place: { file },
    });
  return { file, bodies, setAside: list.entries.length - bodies.length, weights };
}

function weightColumn(
  columns: readonly { readonly name: string; readonly label: { readonly text: string } }[],
  weights: string,
  file: string,
): number {
  const wanted = snakeCase(weights);
  const found = columns.findIndex(
    ({ name, label }) => name === wanted || snakeCase(label.text) === wanted,
  );
  if (found >= 0) return found;
  throw new InputError('column-unknown', {
    what: 'the survey has no such column of weights',
    allowed: listedNames(columns.map(({ label }) => label.text)),
    got: weights,
    place: { file, field: 'weights' },
  });
}

/** Undefined for what is no weight; a body of no weight counts for nobody. */
function weightOf(text: string): number | undefined {
  const cell = parseNumberCell(text);
  return cell.kind === 'number' && cell.unit === undefined && cell.value >= 0
    ? cell.value
    : undefined;
}

/** The normal with the means, deviations and correlation of these bodies. */
export function normalOf(bodies: readonly WeightedBody[]): BivariateNormal {
  const all = bodies.reduce((sum, { weight }) => sum + weight, 0);
  const mean = (of: (body: WeightedBody) => number): number =>
    bodies.reduce((sum, body) => sum + body.weight * of(body), 0) / all;
  const spread = (girth: 'waist' | 'hip'): Spread => {
    const middle = mean((body) => body[girth]);
    return { mean: middle, sd: Math.sqrt(mean((body) => (body[girth] - middle) ** 2)) };
  };
  const [waist, hip] = [spread('waist'), spread('hip')];
  const common = mean((body) => (body.waist - waist.mean) * (body.hip - hip.mean));
  return { waist, hip, r: common / (waist.sd * hip.sd) };
}
