/** What is to be said of pieces that were read: notches beside their lines, cut lines without rules. */
import { nearestEdgePlace } from '../pattern/edge-place';
import type { PatternPiece, ReadingNote } from '../pattern/pattern';
import { pointOf } from '../pattern/piece';
import { RULE_BESIDE } from '../tolerance';

/** Warns of notches that stand on neither cut line nor outline, with how far they are off. */
export function besideNotes({ base }: PatternPiece): readonly ReadingNote[] {
  const { name: piece, outline, cutLine = [], notches } = base.plan;
  return notches.flatMap(({ name, place }): ReadingNote | [] => {
    if (place.by !== 'cut') return [];
    const at = pointOf(base, place.point);
    const found = [outline, cutLine].flatMap((line) => nearestEdgePlace(base, line, at) ?? []);
    const away = Math.min(...found.map((own) => own.away));
    if (away <= RULE_BESIDE) return [];
    return {
      severity: 'warning',
      check: 'notch-beside',
      piece,
      what:
        `${name} stands on no line: ${Math.round(away * 10) / 10} mm from the nearest place of the ` +
        'outline; it moves with that place, and may mark something else than a notch',
    };
  });
}

/** Warns of a cut line none of whose points has a rule, where points of the sewing line have. */
export function cutLineNotes(
  { base: { plan }, path, cutPath }: PatternPiece,
  ruled: { has: (point: number) => boolean },
): readonly ReadingNote[] {
  const hasRules = (line: typeof cutPath): boolean =>
    (line?.stops ?? []).some(({ point }) => ruled.has(point));
  if (cutPath === undefined || hasRules(cutPath) || !hasRules(path)) return [];
  return [
    {
      severity: 'warning',
      check: 'cut-unruled',
      piece: plan.name,
      what:
        'the sewing line has rules and the boundary has none, so what is cut is the same in every ' +
        'size while what is sewn is not',
    },
  ];
}
