/** The fewest slips that explain all runs that can be explained. */
import type { Explanation, Run } from './explanations';
import type { Slip } from './slip';
import { EXACT_SLIP } from '../../tolerance';

/** One slip with the runs it had a part in. */
export interface FoundSlip {
  readonly slip: Slip;
  readonly runs: readonly Run[];
  /** Slips that would have given the same numbers in all these runs: the sheet cannot tell. */
  readonly alike: readonly Slip[];
}

/** What went wrong in a sheet, as far as the catalog of slips can tell. */
export interface ExplainedSheet {
  /** In the order of the catalog of slips. */
  readonly found: readonly FoundSlip[];
  /** Runs of wrong cells that no slip gives. */
  readonly unexplained: readonly Run[];
}

/** Sets of slips looked at before the best of them is taken; far above what real sheets need. */
const MOST_STEPS = 200_000;

/**
 * Every run takes one of its explanations so that as few different slips as possible are taken in
 * all. Among equally few, those that give the cells exactly go first, then those that stand first in
 * `catalog`.
 */
export function fewestSlips(runs: readonly Run[], catalog: readonly Slip[]): ExplainedSheet {
  const rank = new Map(catalog.map(({ id }, i) => [id, i]));
  const byId = new Map(catalog.map((slip) => [slip.id, slip]));
  const explained = runs.filter(({ explanations }) => explanations.length > 0);
  const taken = smallestSet(explained, rank);
  const chosen = explained.map((run) => ({ run, slips: bestWithin(run, taken)?.slips ?? [] }));
  const found = [...taken]
    .sort((a, b) => (rank.get(a) ?? 0) - (rank.get(b) ?? 0))
    .flatMap((id): FoundSlip[] => {
      const slip = byId.get(id);
      const own = chosen.filter(({ slips }) => slips.some((one) => one.id === id));
      return slip === undefined || own.length === 0
        ? []
        : [
            {
              slip,
              runs: own.map(({ run }) => run),
              alike: catalog.filter(
                (other) =>
                  other !== slip &&
                  // Two rows exchanged show in both of them.
                  (other.kind !== 'rows' || slip.kind === 'rows') &&
                  own.every(isAlike(slip, other)),
              ),
            },
          ];
    });
  return { found, unexplained: runs.filter(({ explanations }) => explanations.length === 0) };
}

/** Whether a run chosen with `slip` would be as closely explained with `other` in its place. */
function isAlike(slip: Slip, other: Slip) {
  return ({ run, slips }: { readonly run: Run; readonly slips: readonly Slip[] }): boolean => {
    const wanted = slips.map(({ id }) => (id === slip.id ? other.id : id)).sort();
    const missBy = (ids: readonly string[]): number =>
      run.explanations.find((one) => [...idsOf(one)].sort().join() === ids.join())?.miss ??
      Infinity;
    const own = missBy(slips.map(({ id }) => id).sort());
    return missBy(wanted) <= Math.max(own, EXACT_SLIP);
  };
}

type Ids = ReadonlySet<string>;

/** Depth first over the runs, those with the fewest explanations first, with bounding. */
function smallestSet(runs: readonly Run[], rank: ReadonlyMap<string, number>): Ids {
  const order = distinct(runs).sort((a, b) => a.explanations.length - b.explanations.length);
  let best: Ids = new Set(order.flatMap((run) => idsOf(run.explanations[0])));
  let least = costOf(best, order, rank);
  let steps = 0;
  const visit = (depth: number, taken: Ids): void => {
    if (++steps > MOST_STEPS || taken.size > least.count) return;
    const run = order.slice(depth).find((one) => bestWithin(one, taken) === undefined);
    if (run === undefined) {
      const cost = costOf(taken, order, rank);
      if (isLess(cost, least)) [best, least] = [taken, cost];
      return;
    }
    for (const explanation of run.explanations)
      visit(depth, new Set([...taken, ...idsOf(explanation)]));
  };
  visit(0, new Set());
  return best;
}

interface Cost {
  readonly count: number;
  /** Runs that another slip would have given exactly. */
  readonly loose: number;
  readonly ranks: number;
}

function costOf(taken: Ids, runs: readonly Run[], rank: ReadonlyMap<string, number>): Cost {
  let ranks = 0;
  for (const id of taken) ranks += rank.get(id) ?? 0;
  const loose = runs.filter((run) => {
    const miss = bestWithin(run, taken)?.miss ?? Infinity;
    return miss > EXACT_SLIP && run.explanations.some((other) => other.miss <= EXACT_SLIP);
  }).length;
  return { count: taken.size, loose, ranks };
}

function isLess(a: Cost, b: Cost): boolean {
  if (a.count !== b.count) return a.count < b.count;
  return a.loose === b.loose ? a.ranks < b.ranks : a.loose < b.loose;
}

/** Of the explanations by these slips alone the closest. */
function bestWithin({ explanations }: Run, taken: Ids): Explanation | undefined {
  return explanations
    .filter(({ slips }) => slips.every(({ id }) => taken.has(id)))
    .reduce<Explanation | undefined>(
      (best, one) => (best === undefined || one.miss < best.miss ? one : best),
      undefined,
    );
}

function idsOf(explanation: Explanation | undefined): readonly string[] {
  return explanation?.slips.map(({ id }) => id) ?? [];
}

/** Runs with the same explanations are decided together. */
function distinct(runs: readonly Run[]): Run[] {
  const seen = new Map<string, Run>();
  for (const run of runs) {
    const exact = (one: Explanation): string => (one.miss <= EXACT_SLIP ? '=' : '~');
    const signature = run.explanations
      .map((one) => `${exact(one)}${idsOf(one).join('+')}`)
      .join('\n');
    if (!seen.has(signature)) seen.set(signature, run);
  }
  return [...seen.values()];
}
