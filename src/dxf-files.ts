/** A graded pattern as DXF files: for exchange after ASTM D6673, and plainly nested. */
import type { ExchangePiece } from './dxf/exchange-piece';
import { exchangePiece } from './dxf/exchange-piece';
import type { GradedPoint } from './dxf/graded-line';
import { gradedLine } from './dxf/graded-line';
import { writeRuleTable } from './dxf/rule-table';
import { ruleNumbers, writeD6673 } from './dxf/write-d6673';
import { writeNest } from './dxf/write-nest';
import type { PatternResult } from './grade-pattern';
import type { GradedPattern, GradedSize } from './grade/graded-range';
import type { CutPiece } from './pattern/cut-piece';
import { cutPieces } from './pattern/cut-pieces';
import type { GradeResult } from './pipeline';
import type { ResultFile } from './result-files';
import { drawingOf } from './result-files';

/** The DXF files of a given pattern. */
export function patternDxf({ title, pattern, range, shown }: PatternResult): readonly ResultFile[] {
  const pieces = pattern.pieces.map(({ splines, base: { plan } }, p) => {
    const inner = splines.flatMap(({ points }) => points.slice(1, -1));
    const smooth = new Set([
      ...inner.map((i) => plan.pointNames[i] ?? ''),
      ...(plan.notches ?? []),
    ]);
    return exchangePiece(pieceOf(range, p), range.rules.base, smooth);
  });
  return dxfFiles(title, range, pieces, shown);
}

/**
 * The DXF files of a drafted skirt: the cut line as the boundary and the net line as the sew line.
 * A piece whose cut line has more corners in one size than in another has its net line as boundary.
 */
export function skirtDxf(result: GradeResult): readonly ResultFile[] {
  const { range, shown } = result;
  const cut = range.sizes.map(({ pieces, parameters }: GradedSize) =>
    cutPieces(pieces, parameters),
  );
  const { base } = range.rules;
  const pieces = range.plans.map((_, p) => {
    const net = exchangePiece(pieceOf(range, p), base, new Set());
    const own = cut.flatMap((size) => size[p] ?? []);
    return withCutLine(net, own, base);
  });
  return dxfFiles(drawingOf(result).title, range, pieces, shown);
}

function pieceOf({ sizes }: GradedPattern, p: number) {
  return sizes.flatMap(({ pieces }) => pieces[p] ?? []);
}

function withCutLine(net: ExchangePiece, sizes: readonly CutPiece[], base: number): ExchangePiece {
  const model = sizes[base];
  const line = gradedLine(
    sizes.map(({ cut }) => cut),
    base,
  );
  if (model === undefined) return net;
  const spots = (of: (piece: CutPiece) => readonly GradedPoint['at'][number][]) =>
    of(model).flatMap((_, i): GradedPoint[] => {
      const at = sizes.flatMap((piece) => of(piece)[i] ?? []);
      return at.length === sizes.length ? [{ kind: 'turn', at }] : [];
    });
  return {
    ...net,
    boundary: line ?? net.boundary,
    sewLine: line === undefined ? undefined : net.boundary,
    notches: spots(({ notches }) =>
      notches.map(({ cut, net: sewn }) => (line === undefined ? sewn : cut)),
    ),
    drillHoles: spots(({ drillHoles }) => drillHoles),
    grain: spots(({ grain }) => [grain.from, grain.to]),
    fold: spots(({ fold }) => (fold === undefined ? [] : [fold.from, fold.to])),
  };
}

function dxfFiles(
  title: string,
  range: GradedPattern,
  pieces: readonly ExchangePiece[],
  shown: GradedPattern['sizes'],
): readonly ResultFile[] {
  const numbers = ruleNumbers();
  const sizes = range.sizes.map(({ label }) => label);
  const { base } = range.rules;
  const exchange = [...writeD6673({ title, sizes, base, pieces }, numbers)].join('');
  const { rules } = numbers;
  return [
    { name: 'pattern.dxf', text: exchange },
    {
      name: 'pattern.rul',
      text: writeRuleTable({ name: title, sizes, sample: range.base, rules }),
    },
    { name: 'nest.dxf', text: [...writeNest(shown)].join('') },
  ];
}
