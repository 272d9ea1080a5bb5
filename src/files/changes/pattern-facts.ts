/** A pattern in its base size as single facts: points, edges, seams, and how each piece is cut. */
import { edgeSegments } from '../../pattern/piece';
import type { PatternPiece, Pattern } from '../../pattern/pattern';
import type { SeamSide } from '../../pattern/seam-pair';
import { segmentLength } from '../../geometry/segment';
import { cuttings } from '../../render/captions';
import type { LengthUnit } from '../../units';
import { tableNumber, trimmed } from '../../units';
import type { Fact } from './facts';
import { statedFacts, wordFact } from './stated-facts';

/** The facts of a pattern; `sizes` are those of its rules, where they come with it. */
export function patternFacts(pattern: Pattern, sizes: readonly string[] = []): readonly Fact[] {
  const { title, base, imprint = {}, unread, pieces, seams, unit } = pattern;
  return [
    ...statedFacts({ title, base, imprint, unread, sizes }),
    ...pieces.flatMap((piece) => [
      ...pieceFacts(piece),
      ...pointFacts(piece, unit),
      ...edgeFacts(piece, unit),
    ]),
    ...seams.flatMap(({ name, sides: [first, second], ease }) => [
      ...wordFact('seam', name, 'sides', `${sideWords(first)} to ${sideWords(second)}`),
      ...(typeof ease === 'number' && ease !== 0 ? [length('seam', name, 'ease', ease, unit)] : []),
    ]),
  ];
}

function pieceFacts({ base: { plan }, ruleX }: PatternPiece): readonly Fact[] {
  const turn = (Math.atan2(ruleX.y, ruleX.x) * 180) / Math.PI;
  return [
    ...wordFact('piece', plan.name, 'cut', cuttings(plan).join(', ') || 'no count'),
    ...wordFact('piece', plan.name, 'reference', turn === 0 ? '' : `${trimmed(turn, 3)} degrees`),
  ];
}

/** Places, what each point is, and the named rule that the pattern gives it. */
function pointFacts(piece: PatternPiece, unit: LengthUnit): readonly Fact[] {
  const { plan, points } = piece.base;
  const kinds = kindsOf(piece);
  return plan.pointNames.flatMap((own, i) => {
    // The handles of a spline follow its points.
    if (own.includes('.')) return [];
    const { x, y } = points[i] ?? { x: NaN, y: NaN };
    const name = `${plan.name}.${own}`;
    return [
      length('point', name, 'x', x, unit),
      length('point', name, 'y', y, unit),
      ...wordFact('point', name, 'kind', kinds.get(own) ?? 'corner'),
      ...wordFact('rule', name, 'rule', piece.ruleNames.get(own)?.rule),
    ];
  });
}

/** What each point is that is no corner. */
function kindsOf({ base: { plan }, splines }: PatternPiece): ReadonlyMap<string, string> {
  const curve = splines.flatMap(({ points }) =>
    points.slice(1, -1).map((at) => plan.pointNames[at] ?? ''),
  );
  return new Map<string, string>([
    ...curve.map((name) => [name, 'curve'] as const),
    ...[...plan.handles].map((name) => [name, 'handle'] as const),
    ...plan.darts.map(({ tip }) => [tip, 'dart'] as const),
    ...plan.marks.flatMap(({ name, through }) => through.map((own) => [own, name] as const)),
    ...plan.drillHoles.flatMap((hole) => ('point' in hole ? [[hole.point, 'drill'] as const] : [])),
    ...plan.notches.map(
      ({ name, marks }) => [name, marks === 2 ? 'double notch' : 'notch'] as const,
    ),
  ]);
}

/** How long each edge is as it is sewn, its allowance, and whether it lies on the fold. */
function edgeFacts({ base }: PatternPiece, unit: LengthUnit): readonly Fact[] {
  const { plan } = base;
  return [...new Set(plan.outline.map(({ seam }) => seam))].flatMap((seam) => {
    const name = `${plan.name}.${seam}`;
    const parts = plan.outline.filter((edge) => edge.seam === seam && edge.kind !== 'dart');
    const segments = parts.flatMap((edge) => edgeSegments(base, edge));
    const sewn = segments.reduce((sum, segment) => sum + segmentLength(segment), 0);
    const allowance = plan.edges.get(seam)?.allowance;
    return [
      length('edge', name, 'length', sewn, unit),
      ...(typeof allowance === 'number'
        ? [length('edge', name, 'allowance', allowance, unit)]
        : []),
      ...wordFact('edge', name, 'fold', parts.some(({ kind }) => kind === 'fold') ? 'on fold' : ''),
    ];
  });
}

function sideWords({ edges }: SeamSide): string {
  return edges.map(({ piece, edge }) => `${piece}.${edge}`).join(' + ');
}

function length(of: string, name: string, value: string, mm: number, unit: LengthUnit): Fact {
  return { of, name, size: '', value, text: tableNumber(mm, unit), unit };
}
