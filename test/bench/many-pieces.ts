/** A production order's worth of pieces: 200 pieces of 60 points, graded over 20 sizes. */
import { buildPiece } from '../../src/given/build-piece';
import type { GivenPattern } from '../../src/given/pattern';
import type { RawPoint } from '../../src/given/raw-point';
import { pairsBySeam } from '../../src/given/seam-pairs';
import type { GivenRule, GivenRules } from '../../src/given/rules';

export const PIECES = 200;
export const POINTS = 60;
export const SIZES = 20;
const BASE = 8;

/** Rings of straight and curved edges; each piece is sewn to the next by one of its edges. */
function rawPiece(p: number) {
  const points = Array.from({ length: POINTS }, (_, i): RawPoint => {
    const angle = (2 * Math.PI * i) / POINTS;
    const radius = 200 + 20 * Math.sin(3 * angle);
    const edge = `edge_${Math.floor(i / 10)}`;
    const seam = i < 10 ? `seam_${Math.floor(p / 2)}` : '';
    return {
      name: `p${i}`,
      kind: i % 10 === 0 || i % 10 > 6 ? 'corner' : 'curve',
      at: { x: radius * Math.cos(angle), y: radius * Math.sin(angle) },
      edge,
      seam,
      fold: false,
      rule: { text: '', place: {} },
      place: {},
    };
  });
  return { name: `piece_${p}`, points, cuttings: [] };
}

export function manyPieces(): { readonly pattern: GivenPattern; readonly rules: GivenRules } {
  const raw = Array.from({ length: PIECES }, (_, p) => rawPiece(p));
  const pieces = raw.map(({ name, points, cuttings }) => buildPiece(name, points, cuttings));
  const rule = (i: number): GivenRule => ({
    moves: Array.from({ length: SIZES }, (_, size) => ({
      x: (size - BASE) * Math.cos(i) * 5,
      y: (size - BASE) * Math.sin(i) * 5,
    })),
    text: { x: '', y: '' },
    place: {},
  });
  const ruled = pieces.map(
    () => new Map(Array.from({ length: POINTS }, (_, i) => [i, rule(i)] as const)),
  );
  return {
    pattern: {
      ...pairsBySeam(raw),
      file: 'many.csv',
      title: 'Many pieces',
      unit: 'cm',
      base: `${BASE}`,
      pieces,
      leftOut: [],
    },
    rules: {
      file: 'many-rules.csv',
      sizes: Array.from({ length: SIZES }, (_, size) => `${size}`),
      base: BASE,
      ruled,
    },
  };
}

/** The grading alone, written out by hand: a loop of additions over the same numbers. */
export function byHand({ pieces }: GivenPattern, { ruled }: GivenRules) {
  const sizes = [];
  for (let size = 0; size < SIZES; size++) {
    const graded = [];
    for (let p = 0; p < PIECES; p++) {
      const from = pieces[p]?.base.points ?? [];
      const rules = ruled[p];
      const points = [];
      for (let i = 0; i < POINTS; i++) {
        const at = from[i];
        const move = rules?.get(i)?.moves[size];
        if (at !== undefined && move !== undefined)
          points.push({ x: at.x + move.x, y: at.y + move.y });
      }
      graded.push(points);
    }
    sizes.push(graded);
  }
  return sizes;
}
