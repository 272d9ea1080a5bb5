/** A graded pattern as DXF files: for exchange after ASTM D6673, and plainly nested. */
import { checkExchange } from '../check/exchange';
import type { Finding } from '../check/finding';
import type { ExchangePiece } from '../dxf/exchange-piece';
import { exchangePiece } from '../dxf/exchange-piece';
import { writeRuleTable } from '../dxf/rule-table';
import { ruleNumbers, writeD6673 } from '../dxf/write-d6673';
import type { NestLines } from '../dxf/write-nest';
import { writeNest } from '../dxf/write-nest';
import { point } from '../geometry/point';
import type { SeamPair } from '../given/pattern';
import type { PatternResult } from '../jobs/grade-pattern';
import type { GradedPattern, GradedSize, SizedPieces } from '../grade/graded-range';
import { cutPieces } from '../pattern/cut-pieces';
import type { Part, Piece, PiecePlan } from '../pattern/piece';
import type { GradeResult } from '../jobs/grade-chart';
import type { ResultFile } from './result-files';
import { drawingOf, longFile } from './result-files';
import { wayOf } from '../seams/walk-pair';

/** DXF files, and what they could not carry. */
export interface DxfResult {
  readonly files: readonly ResultFile[];
  readonly findings: readonly Finding[];
}

/** The DXF files of a given pattern; `lines` are those of the nest. */
export function patternDxf(result: PatternResult): DxfResult {
  const { title, pattern, range, shown, seams, lines } = result;
  const { base } = range.rules;
  const pieces = pattern.pieces.map(({ splines, ruleX, base: { plan } }, p) => {
    const inner = splines.flatMap(({ points }) => points.slice(1, -1));
    const smooth = new Set([
      ...inner.map((i) => plan.pointNames[i] ?? ''),
      ...(plan.notches ?? []),
    ]);
    const sizes = pieceOf(range, p);
    const cut = range.sizes.flatMap(({ cutPieces: own }) => own?.[p] ?? []);
    return exchangePiece({ sizes, cut, base, smooth, ruleX });
  });
  const pairs = seams.map(({ pair, way }) => ({ ...pair, way }));
  return dxfFiles(title, range, pieces, pairs, shown, lines);
}

/** The DXF files of a drafted skirt; `lines` of the result are those of the nest. */
export function skirtDxf(result: GradeResult): DxfResult {
  const { range, lines } = result;
  const cut = range.sizes.map(({ pieces, parameters }: GradedSize) =>
    cutPieces(pieces, parameters),
  );
  const pieces = range.plans.map((_, p) =>
    exchangePiece({
      sizes: pieceOf(range, p),
      cut: cut.flatMap((size) => size[p] ?? []),
      base: range.rules.base,
      smooth: new Set(),
      ruleX: point(1, 0),
    }),
  );
  const { title, sizes } = drawingOf(result);
  const seams = skirtSeams(range.sizes[range.rules.base]?.pieces ?? []);
  return dxfFiles(title, range, pieces, seams, sizes, lines);
}

/** The seams of a skirt that can be walked: its sides, and its waist along a facing. */
function skirtSeams(pieces: readonly Piece[]): readonly SeamPair[] {
  const plans = pieces.map(({ plan }) => plan);
  const sided = (part: Part) =>
    plans.filter((plan) => plan.part === part && plan.outline.some(({ seam }) => seam === 'side'));
  const pair = (a: PiecePlan, b: PiecePlan, edge: string): SeamPair => {
    const sides = [
      { edges: [{ piece: a.name, edge }] },
      { edges: [{ piece: b.name, edge }] },
    ] as const;
    const found: SeamPair = { name: edge, sides, ease: 0, way: undefined };
    return { ...found, way: wayOf(pieces, found) };
  };
  const sides = (['panel', 'facing', 'lining'] as const).flatMap((part) => {
    const [front, back, ...more] = sided(part);
    return front && back && more.length === 0 ? [pair(front, back, 'side')] : [];
  });
  const waists = sided('facing').flatMap((facing) => {
    const panel = sided('panel').find(({ name }) => facing.name.startsWith(name));
    return panel === undefined ? [] : [pair(panel, facing, 'waist')];
  });
  return [...sides, ...waists];
}

function pieceOf({ sizes }: GradedPattern, p: number) {
  return sizes.flatMap(({ pieces }) => pieces[p] ?? []);
}

function dxfFiles(
  title: string,
  range: GradedPattern,
  pieces: readonly ExchangePiece[],
  seams: readonly SeamPair[],
  shown: readonly SizedPieces[],
  lines: NestLines = 'both',
): DxfResult {
  const numbers = ruleNumbers();
  const sizes = range.sizes.map(({ label }) => label);
  const { base } = range.rules;
  const exchange = [...writeD6673({ title, sizes, base, pieces, seams }, numbers)].join('');
  const { rules } = numbers;
  const files = [
    { name: 'pattern.dxf', text: exchange },
    {
      name: 'pattern.rul',
      text: writeRuleTable({ name: title, sizes, sample: range.base, rules }),
    },
    longFile('nest.dxf', () => writeNest(shown, lines)),
  ];
  return { files, findings: checkExchange(pieces) };
}
