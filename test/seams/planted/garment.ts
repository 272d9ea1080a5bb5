/** Garments of our own whose seams meet in every size: a pattern sheet, and right moves for it. */
import type { Point } from '../../../src/geometry/point';
import { gradedPieces } from '../../../src/given/grade-given';
import { readPattern } from '../../../src/given/read-pattern';
import { gradePattern } from '../../../src/jobs/grade-pattern';
import { readRules } from '../../../src/rule-sheet/read-rules';
import { readSeams } from '../../../src/seams/read-seams';
import { walkedSeams } from '../../../src/seams/walked-seam';

/** A rule as shares of what the body grows by, such as `0.25 bust`; mm. */
export type Shares = Readonly<Record<string, number>>;

/** What a garment is made from; lengths in the pattern are cm, those of `grows` mm a step. */
export interface Garment {
  readonly name: string;
  readonly sizes: readonly string[];
  readonly base: string;
  readonly pattern: string;
  readonly seams: string;
  /** By `piece.point`. */
  readonly rules: Readonly<Record<string, readonly [x: Shares, y: Shares]>>;
  /** What each measurement grows by from size to size, from the smallest. */
  readonly grows: Readonly<Record<string, readonly number[]>>;
  /** Rules whose y is found so that a seam meets in every size. */
  readonly solved?: readonly { readonly point: string; readonly seam: string }[];
}

/** Cumulative moves from the base in mm, by `piece.point`, one a size. */
export type Moves = ReadonlyMap<string, readonly Point[]>;

/** How a sheet is written: whole moves, or steps from the neighbor on the base's side. */
export type Form = 'moves' | 'steps';

/** Thousandths of a millimeter, as a sheet in mm is typed at best. */
const FINEST = 1000;

/** The right moves of a garment, those that are solved among them. */
export function rightMoves(garment: Garment): Moves {
  const moves = new Map<string, readonly Point[]>();
  for (const [name, [x, y]] of Object.entries(garment.rules)) {
    moves.set(
      name,
      garment.sizes.map((_, size) => ({ x: grown(garment, x, size), y: grown(garment, y, size) })),
    );
  }
  for (const { point, seam } of garment.solved ?? []) {
    const gaps = (lift: readonly number[]): readonly number[] => {
      const rule = (moves.get(point) ?? []).map(({ x, y }, s) => ({ x, y: y + (lift[s] ?? 0) }));
      return gapsOf(garment, new Map(moves).set(point, rule), seam);
    };
    let lift: readonly number[] = garment.sizes.map(() => 0);
    for (let round = 0; round < 6; round++) {
      const [now, probed] = [gaps(lift), gaps(lift.map((mm) => mm + 0.5))];
      lift = lift.map((mm, s) => {
        const slope = ((probed[s] ?? NaN) - (now[s] ?? NaN)) / 0.5;
        return s === garment.sizes.indexOf(garment.base) ? 0 : mm - (now[s] ?? NaN) / slope;
      });
    }
    const found = (moves.get(point) ?? []).map(({ x, y }, s) => ({ x, y: y + (lift[s] ?? 0) }));
    moves.set(point, found);
  }
  return moves;
}

function grown({ sizes, base, grows }: Garment, shares: Shares, size: number): number {
  const from = sizes.indexOf(base);
  const [low, high] = [Math.min(size, from), Math.max(size, from)];
  return Object.entries(shares).reduce((sum, [measure, share]) => {
    const steps = grows[measure]?.slice(low, high) ?? [];
    return sum + Math.sign(size - from) * share * steps.reduce((all, step) => all + step, 0);
  }, 0);
}

/** mm by which a seam is farther apart in each size than in the base. */
function gapsOf(garment: Garment, moves: Moves, seam: string): readonly number[] {
  const read = readPattern(garment.pattern, 'pattern.csv');
  const more = garment.seams === '' ? [] : readSeams(garment.seams, 'seams.csv', read).pairs;
  const rules = readRules(ruleText(garment, moves, 'moves'), 'rules.csv', {
    pieces: read.pieces.map(({ base: { plan }, ruleNames }) => ({ plan, ruleNames })),
    unit: 'mm',
    chart: undefined,
    base: garment.base,
  });
  const sizes = gradedPieces(read, rules).map((pieces, i) => ({
    label: garment.sizes[i] ?? '',
    pieces,
    cutPieces: undefined,
    parameters: new Map<string, number>(),
    measures: [],
  }));
  const seams = walkedSeams({ sizes, rules: { base: rules.base, moves: [] } }, [
    ...read.seams,
    ...more,
  ]);
  const walks = seams.find(({ pair }) => pair.name === seam)?.walks ?? [];
  const base = walks[garment.sizes.indexOf(garment.base)]?.gap ?? NaN;
  return walks.map(({ gap }) => gap - base);
}

/** The rule sheet of a garment in mm, with a row a size, typed to so many parts of a millimeter. */
export function ruleText(
  { sizes, base }: Garment,
  moves: Moves,
  form: Form,
  parts = FINEST,
): string {
  const typed = (mm: number): string => String(Math.round(mm * parts) / parts + 0);
  const from = sizes.indexOf(base);
  const rows = [...moves].flatMap(([name, own]) =>
    own.flatMap(({ x, y }, size) => {
      if (size === from) return [];
      const before = form === 'moves' ? undefined : own[size + Math.sign(from - size)];
      const cells = [x - (before?.x ?? 0), y - (before?.y ?? 0)].map(typed);
      return [`${name.replace('.', ',')},${sizes[size] ?? ''},${cells.join(',')}`];
    }),
  );
  const head = form === 'moves' ? 'dx,dy' : 'step_dx,step_dy';
  return `# sizes: ${sizes.join(', ')}\n# unit: mm\npiece,point,size,${head}\n${rows.join('\n')}\n`;
}

/** A garment graded by a rule sheet. */
export function gradedBy({ pattern, seams }: Pick<Garment, 'pattern' | 'seams'>, rules: string) {
  return gradePattern({
    pattern: { text: pattern, file: 'pattern.csv' },
    rules: { text: rules, file: 'rules.csv' },
    ...(seams === '' ? {} : { seams: { text: seams, file: 'seams.csv' } }),
  });
}
