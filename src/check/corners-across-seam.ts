/** Whether the edges beside a seam run on across it once it is sewn: one finding a seam, not one a size. */
import { runsOf } from '../lists/runs';
import { grouped } from '../lists/grouped';
import type { WalkedSeam } from '../seams/walked-seam';
import { CORNER_WANTS_RULE, EDGE_TURN, RUNS_ACROSS, SHOWN_ALIKE } from '../tolerance';
import { trimmed } from '../units';
import type { Finding, Severity } from './finding';

const RUNS_ON = 'common practice, no source: an edge runs on across the seam';

/** The corners that meet at an end of a seam in a size. */
interface Corner {
  readonly size: number;
  /** The points that meet, `front.side_hem and back.side_hem`, and the first of them. */
  readonly points: string;
  readonly first: string;
  /** Their sum in degrees. */
  readonly sum: number;
  readonly severity: Severity;
}

/**
 * The findings of a seam: where a point or a dip is made, for each run of sizes in which it is; what is
 * drawn as a point in the base; what holds in every size. Both ends are told together where it is the
 * same sizes. Nothing is asked where the seam itself goes on, nor where the outline of one side runs on
 * past the end, as a sleeve does at its crown: there is no corner. `piece` are the names of the pieces,
 * `labels` those of the sizes.
 */
export function cornersAcrossSeam(
  seam: WalkedSeam,
  piece: string,
  labels: readonly string[],
  base: number,
): Finding[] {
  const runs = ([0, 1] as const).flatMap((end) =>
    runsOf(cornersAt(seam, end, base), (corner, last) => corner.severity === last.severity),
  );
  const told = grouped(runs, (run) => `${run[0]?.severity ?? ''} ${sizesOf(run, labels)}`);
  return [...told.values()].flatMap((alike): Finding | [] => {
    const corners = alike.flat();
    const [leading] = corners;
    // Where it is the same in several sizes the first of them is told, whatever the last digits say.
    const worst = corners.reduce(
      (most, own) => (off(own) > off(most ?? own) + SHOWN_ALIKE ? own : most),
      leading,
    );
    if (worst === undefined) return [];
    const firsts = [...new Set(corners.map(({ first }) => first))];
    return {
      severity: worst.severity,
      check: 'corners-across-seam',
      size: sizesOf(corners, labels),
      piece,
      subject: `${seam.pair.name} at ${firsts.join(' and ')}`,
      quantity: 'angle',
      measured: worst.sum,
      expected: 180,
      tolerance: EDGE_TURN,
      source: RUNS_ON,
      message: cornerWords(worst, corners, labels),
    };
  });
}

/** Degrees by which the corners miss a straight line. */
function off({ sum }: Corner): number {
  return Math.abs(sum - 180);
}

function cornersAt(seam: WalkedSeam, end: 0 | 1, base: number): readonly Corner[] {
  if (!seam.pair.runsOn[end] || seam.goesOn[end]) return [];
  const drawn = seam.walks[base];
  const inBase = drawn?.angleSums[end] ?? NaN;
  if (Number.isNaN(inBase)) return [];
  const isDrawnSo = Math.abs(inBase - 180) > RUNS_ACROSS;
  const widest = Math.max(...(drawn?.walks.map((walk) => walk.angles[end]) ?? []));
  if (isDrawnSo && widest > 180 - CORNER_WANTS_RULE) return [];
  return seam.walks.flatMap((walk, size): Corner[] => {
    if (isDrawnSo && size !== base) return [];
    const sum = walk.angleSums[end];
    const [first = '', second = ''] = walk.walks.map(({ ends }) => ends[end]);
    const isHeld = Math.abs(sum - 180) <= EDGE_TURN;
    const severity = isHeld ? 'ok' : isDrawnSo ? 'note' : 'warning';
    return [{ size, points: `${first} and ${second}`, first, sum, severity }];
  });
}

/** Empty for all sizes, a label for one, `8-12` for a run. */
function sizesOf(corners: readonly Corner[], labels: readonly string[]): string {
  const ranks = corners.map(({ size }) => size);
  const [least, most] = [Math.min(...ranks), Math.max(...ranks)];
  if (least === 0 && most === labels.length - 1) return '';
  return [...new Set([labels[least], labels[most]])].join('-');
}

function cornerWords(worst: Corner, corners: readonly Corner[], labels: readonly string[]): string {
  const { points, sum, severity, size } = worst;
  const others = [...new Set(corners.map((own) => own.points))].filter((own) => own !== points);
  const also = others.length === 0 ? '' : `, those at ${others.join(' and ')} by less`;
  const isAlike = corners.every(
    (own) => own.points !== points || Math.abs(own.sum - sum) <= SHOWN_ALIKE,
  );
  const where = isAlike ? '' : ` in ${labels[size] ?? ''}`;
  switch (severity) {
    case 'ok':
      return (
        `the corners add up to ${trimmed(sum, 1)} degrees` +
        (where === '' ? '' : `${where}, and no farther from 180 elsewhere`)
      );
    case 'note':
      return (
        `the corners at ${points} add up to ${trimmed(sum, 1)} degrees instead of 180${also}, ` +
        'so no edge runs on there as the base is drawn; the other sizes are not held against it'
      );
    default:
      return (
        `the corners at ${points} add up to ${trimmed(sum, 1)} degrees instead of 180${where}${also}, ` +
        'which makes a point or a dip: with the seam sewn, true the edge across it by hand'
      );
  }
}
