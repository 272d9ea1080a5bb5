/** A production order's worth of pieces: 200 pieces of 60 points, graded over 20 sizes. */
import { buildPiece } from '../../src/given/build-piece';
import type { Pattern } from '../../src/pattern/pattern';
import type { RawPoint } from '../../src/given/raw-point';
import { pairsBySeam } from '../../src/given/pairs-by-seam';
import type { GivenRule, GivenRules } from '../../src/rule-sheet/point-rules';

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
  return {
    name: `piece_${p}`,
    points,
    cuttings: [],
    allowances: new Map<string, number>(),
    cutLine: [],
    cutNotches: [],
    doubleNotches: new Set<string>(),
  };
}

export function manyPieces(): { readonly pattern: Pattern; readonly rules: GivenRules } {
  const raw = Array.from({ length: PIECES }, (_, p) => rawPiece(p));
  const pieces = raw.map(buildPiece);
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

/** The same order as a sample room would hand it in: a pattern and a rule sheet, CSV. */
export function manyFiles(): { readonly pattern: string; readonly rules: string } {
  const raw = Array.from({ length: PIECES }, (_, p) => rawPiece(p));
  const pattern = raw.flatMap(({ name, points }) =>
    points.map(
      ({ name: point, at, kind, edge, seam }) =>
        `${name},${point},${at.x.toFixed(6)},${at.y.toFixed(6)},${kind},${edge},${seam}`,
    ),
  );
  const rules = raw.flatMap(({ name, points }) =>
    points.map(
      ({ name: point }, i) =>
        `${name},${point},${(5 * Math.cos(i)).toFixed(6)},${(5 * Math.sin(i)).toFixed(6)}`,
    ),
  );
  const sizes = Array.from({ length: SIZES }, (_, size) => `${size}`).join(', ');
  return {
    pattern: `# unit: mm\n# base: ${BASE}\npiece,point,x,y,kind,edge,seam\n${pattern.join('\n')}\n`,
    rules: `# unit: mm\n# sizes: ${sizes}\npiece,point,step_dx,step_dy\n${rules.join('\n')}\n`,
  };
}

/** The grading alone, written out by hand: a loop of additions over the same numbers. */
export function byHand({ pieces }: Pattern, { ruled }: GivenRules) {
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
