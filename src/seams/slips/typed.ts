/** The slips that there may be in a rule that a person typed. */
import type { RuledPoint } from '../../rule-sheet/point-rules';
import { SLIP_FAMILIES } from './families';
import type { SheetState } from './sheet-state';
import type { Closing } from './subject';
import { subjectAt } from './subject';
import type { SuspectedSlip } from './suspected-slip';

/** The slips of every family at a point. */
export function typedSlips(
  state: SheetState,
  at: RuledPoint,
  closing: Closing,
): readonly SuspectedSlip[] {
  const subject = subjectAt(state, at, closing);
  const sharers = sharersOf(state, at);
  return SLIP_FAMILIES.flatMap((family) => family(subject)).map((slip) => sharedBy(slip, sharers));
}

/** The other points that use the named rule of a point. */
function sharersOf({ sheet }: SheetState, at: RuledPoint): readonly RuledPoint[] {
  const rule = sheet[at.piece]?.get(at.point);
  if (rule === undefined) return [];
  return sheet.flatMap((own, piece) =>
    [...own].flatMap(([point, other]) =>
      other === rule && (piece !== at.piece || point !== at.point) ? [{ piece, point }] : [],
    ),
  );
}

/** A slip in a named rule is made at every point that uses the rule. */
function sharedBy(slip: SuspectedSlip, sharers: readonly RuledPoint[]): SuspectedSlip {
  const [repair, second] = slip.repairs;
  if (sharers.length === 0 || repair === undefined || second !== undefined) return slip;
  return { ...slip, repairs: [repair, ...sharers.map((at) => ({ at, moves: repair.moves }))] };
}
