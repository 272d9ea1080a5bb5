/** A graded pattern as DXF files: for exchange after ASTM D6673, and plainly nested. */
import type { UnsaidSeam } from '../check/exchange';
import { checkExchange, checkUnfolded, noteUnsaidSeams } from '../check/exchange';
import { exchangePiece } from '../dxf/exchange-piece';
import { writeRuleTable } from '../dxf/rule-table';
import { ruleNumbers, writeD6673 } from '../dxf/write-d6673';
import { isOnFold, unfoldingOf } from '../dxf/unfolding';
import { writeNest } from '../dxf/write-nest';
import type { GradeResult } from '../jobs/grade-result';
import { cornerAngle } from '../pattern/corner-angle';
import type { PatternPiece } from '../pattern/pattern';
import type { SeamPair } from '../pattern/seam-pair';
import { meetsItself } from '../pattern/seam-pair';
import { RUNS_STRAIGHT } from '../tolerance';
import type { Exported } from './exports';
import { longFile } from './result-file';

/** The DXF files, and what they could not carry; `unfold` draws pieces on the fold whole in the nest. */
export function dxfFiles(result: GradeResult, unfold = false): Exported {
  const { title, pattern, range, shown, lines } = result;
  const { base } = range.rules;
  const pieces = pattern.pieces.map((piece, p) =>
    exchangePiece({
      sizes: range.sizes.flatMap((size) => size.pieces[p] ?? []),
      cut: range.sizes.flatMap(({ cutPieces }) => cutPieces?.[p] ?? []),
      base,
      smooth: smoothPoints(piece),
      ruleX: piece.ruleX,
    }),
  );
  const numbers = ruleNumbers();
  const sizes = range.sizes.map(({ label }) => label);
  const drawing = { title, sizes, base, pieces, seams: walkableSeams(result) };
  const exchange = [...writeD6673(drawing, numbers)].join('');
  const { rules } = numbers;
  const files = [
    { name: 'pattern.dxf', text: exchange },
    {
      name: 'pattern.rul',
      text: writeRuleTable({ name: title, sizes, sample: range.base, rules }),
    },
    longFile('nest.dxf', () => writeNest(shown, { lines, unfold })),
  ];
  return {
    files,
    findings: [
      ...checkExchange(pieces),
      ...noteUnsaidSeams(unsaidSeams(result)),
      ...(unfold ? checkUnfolded(stillFolded(result)) : []),
    ],
  };
}

/** The names of pieces on the fold that cannot be opened in some size. */
function stillFolded({ pattern, shown }: GradeResult): readonly string[] {
  return pattern.pieces.flatMap(({ base: { plan } }, p) => {
    const folded = shown.filter(({ pieces, cutPieces }) => {
      const [piece, cut] = [pieces[p], cutPieces?.[p]];
      return piece !== undefined && isOnFold(piece) && unfoldingOf(piece, cut) === undefined;
    });
    return folded.length === 0 ? [] : [plan.name];
  });
}

/** The points at which the outline does not turn: those within a curve, and notches on a straight. */
function smoothPoints({ splines, base }: PatternPiece): ReadonlySet<string> {
  const { outline, notches, pointNames } = base.plan;
  const inner = splines.flatMap(({ points }) => points.slice(1, -1));
  const isStraight = (name: string): boolean =>
    outline.every(({ kind, from, to }) => kind === 'line' || (from !== name && to !== name)) &&
    180 - cornerAngle(base, name) <= RUNS_STRAIGHT;
  const within = notches.flatMap(({ place }) =>
    place.by === 'joint' && isStraight(place.point) ? [place.point] : [],
  );
  return new Set([...inner.map((i) => pointNames[i] ?? ''), ...within]);
}

/** The seams as words in the file can say them, with the way that their sides run. */
function walkableSeams({ seams, range }: GradeResult): readonly SeamPair[] {
  return seams
    .filter(({ pair }) => whyUnsaid(pair) === undefined)
    .map(({ pair, way, walks }) => ({ ...pair, way, ease: walks[range.rules.base]?.ease ?? 0 }));
}

function unsaidSeams({ seams }: GradeResult): readonly UnsaidSeam[] {
  return seams.flatMap(({ pair }) => {
    const why = whyUnsaid(pair);
    return why === undefined ? [] : [{ name: pair.name, why }];
  });
}

/** Words name two pieces' edges, neither mirrored nor as the other half of the garment lies. */
function whyUnsaid(pair: SeamPair): UnsaidSeam['why'] | undefined {
  if (meetsItself(pair)) return 'mirrored';
  const isOfOtherHalf = pair.sides.some(({ edges }) => edges.some(({ back }) => back === true));
  return isOfOtherHalf ? 'other half' : undefined;
}
