/** The turn-up of a hem, folded up, must be as wide as the skirt that it lies against. */
import { distanceToSegment } from '../geometry/nearest';
import { mirroredIn, unit } from '../geometry/point';
import { segmentTangent } from '../geometry/segment';
import type { GradedPattern } from '../grade/graded-pattern';
import { finishOf } from '../pattern/allowance';
import type { CutPiece } from '../pattern/cut-piece';
import type { Edge } from '../pattern/piece';
import { edgeSegments } from '../pattern/piece';
import { MEETS_TARGET } from '../tolerance';
import type { LengthDisplay } from '../units';
import { showLength } from '../units';
import type { Finding } from './finding';
import { found } from './finding';

/** One finding for each piece with a hem. */
export function checkTurnUps({ sizes }: GradedPattern, display: LengthDisplay): Finding[] {
  return sizes.flatMap(({ label, cutPieces = [] }) =>
    cutPieces.flatMap((piece) => checkTurnUp(piece, label, display) ?? []),
  );
}

/** The finding for one piece of the size `label`; undefined if it has no hem that ends at a seam. */
function checkTurnUp(
  cutPiece: CutPiece,
  label: string,
  display: LengthDisplay,
): Finding | undefined {
  // Where the pattern gives its cut line, which corner of it belongs to a corner of the hem is not known.
  const ends = hemEnds(cutPiece).filter(({ name }) => cutPiece.corners.has(name));
  const gaps = ends.map(({ hem, name }) => missed(cutPiece, hem, name));
  if (gaps.length === 0) return undefined;
  const measured = Math.max(...gaps);
  const held = measured <= MEETS_TARGET;
  return found({
    severity: held ? 'ok' : 'warning',
    check: 'turn-up',
    size: label,
    piece: cutPiece.piece.plan.name,
    subject: 'hem',
    measured,
    expected: 0,
    tolerance: MEETS_TARGET,
    source: 'common practice, no source: the hem allowance is mirrored about the fold',
    message: held
      ? 'folded up, the hem is as wide as what it lies against'
      : `folded up, the hem misses the edge of the piece by ${showLength(measured, display)}: ` +
        'the edge turns within the depth of the hem',
  });
}

interface HemEnd {
  readonly hem: Edge;
  /** Name of the corner. */
  readonly name: string;
}

/** Corners between a hem and another seam; at a fold the turn-up runs straight on. */
function hemEnds({ piece }: CutPiece): readonly HemEnd[] {
  const { outline } = piece.plan;
  const isHem = (seam: string): boolean => finishOf(piece.plan, seam) === 'hem';
  return outline.flatMap((edge, i): HemEnd[] => {
    const before = outline.at(i - 1);
    if (before === undefined || before.kind === 'fold' || edge.kind === 'fold') return [];
    if (isHem(edge.seam) === isHem(before.seam)) return [];
    return [{ hem: isHem(edge.seam) ? edge : before, name: edge.from }];
  });
}

/** mm from the turn-up's corner, folded up, to the cut line. */
function missed({ piece, cut, corners }: CutPiece, hem: Edge, name: string): number {
  const segment = edgeSegments(piece, hem)[0];
  const corner = corners.get(name);
  if (segment === undefined || corner === undefined) return Infinity;
  const atStart = hem.from === name;
  const along = unit(segmentTangent(segment, atStart ? 0 : 1));
  const folded = mirroredIn(corner, atStart ? segment.from : segment.to, along);
  return Math.min(...cut.map((part) => distanceToSegment(part, folded)));
}
