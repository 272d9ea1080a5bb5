/** A survey of somebody's own: a list of bodies as a crowd. */
import type { BodyEntry, BodyList } from '../bodies/body-list';
import { bodyChart, placeName, readBodyList } from '../bodies/body-list';
import { isOfOneBody } from '../bodies/draft-bodies';
import type { Girths } from '../bodies/fit';
import type { ChartCell } from '../chart/layout';
import { findRow } from '../chart/size-chart';
import { InputError } from '../errors';
import { snakeCase } from '../table/label';
import { listedNames } from '../table/near-names';
import { mayPartThousands, parseNumberCell } from '../table/number-cell';
import type { SaidLine } from '../table/said-line';
import { excerpt, isBlank } from '../table/tidy-text';
import type { WeightedBody } from './coverage';
import type { BivariateNormal, Spread } from './population';

/** Bodies with the weights that were asked for, and how many could not be used. */
export interface Survey {
  readonly file: string;
  readonly bodies: readonly WeightedBody[];
  /** What was set aside, by its rows or columns: no body, or one without waist, hip or weight, or no adult's. */
  readonly setAside: readonly string[];
  /** What stands beside the table of the list. */
  readonly comments: readonly SaidLine[];
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
  const weightOf = column < 0 ? () => 1 : weigher(list, column);
  const bodies: WeightedBody[] = [];
  const setAside: string[] = [];
  for (const entry of list.entries) {
    const girths = girthsOf(list, entry);
    const weight = girths && weightOf(entry);
    if (girths === undefined || weight === undefined) setAside.push(placeName(list, entry));
    else bodies.push({ ...girths, weight });
  }
  if (bodies.length < 2)
    throw new InputError('cell-missing', {
      what: 'the survey has too few bodies whose waist and hip can be read',
      allowed: 'two bodies or more',
      got: `${bodies.length}`,
      place: { file },
    });
  refuseAlike(bodies, file);
  return { file, bodies, setAside, weights, comments: list.comments };
}

/** Undefined for what is no body of an adult. */
function girthsOf(list: BodyList, entry: BodyEntry): Girths | undefined {
  try {
    const chart = bodyChart(list, entry);
    const girth = (name: string): number => findRow(chart, name)?.values[0] ?? NaN;
    return { waist: girth('waist_girth'), hip: girth('hip_girth') };
  } catch (error) {
    if (!(error instanceof InputError) || !isOfOneBody(error)) throw error;
    return undefined;
  }
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

/** Throws InputError `cell-missing` for bodies that count and are all alike in a girth, which have no spread. */
function refuseAlike(bodies: readonly WeightedBody[], file: string): void {
  const counted = bodies.filter(({ weight }) => weight > 0);
  const alike = (['waist', 'hip'] as const).find(
    (girth) => new Set(counted.map((body) => body[girth])).size < 2,
  );
  if (alike === undefined) return;
  throw new InputError('cell-missing', {
    what: 'the bodies of the survey that count for somebody do not differ',
    allowed: `bodies of two ${alike}s or more`,
    got: `${counted.length} with the same ${alike}`,
    place: { file },
  });
}

/**
 * Weighs the bodies of a list by a column; undefined for a blank weight, and a body of no weight counts for
 * nobody. Throws InputError `cell-not-a-number` for a weight that cannot be read, or in two ways.
 */
function weigher(
  { entries, file }: BodyList,
  column: number,
): (entry: BodyEntry) => number | undefined {
  const weights = entries.map(({ cells }) => cells[column]).filter((cell) => cell !== undefined);
  // Beside weights with other decimals a mark is a decimal one.
  const hasDecimals = weights.some(({ text }) => /\d[.,]\d/u.test(text) && !mayPartThousands(text));
  const doubted = hasDecimals ? undefined : weights.find(({ text }) => mayPartThousands(text));
  const refuse = (what: string, { text, row, column: at }: ChartCell): never => {
    throw new InputError('cell-not-a-number', {
      what,
      allowed: 'a number from 0 on, without a mark between thousands',
      got: excerpt(text),
      place: { file, row, column: at },
    });
  };
  if (doubted !== undefined) refuse('a weight can be read in two ways', doubted);
  return ({ cells }) => {
    const typed = cells[column];
    if (typed === undefined || isBlank(typed.text)) return undefined;
    const cell = parseNumberCell(typed.text);
    return cell.kind === 'number' && cell.unit === undefined && cell.value >= 0
      ? cell.value
      : refuse('a weight is not a number', typed);
  };
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
