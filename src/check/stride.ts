/** Room to walk: the step that the skirt allows in every size, against the one that is wanted. */
import type { GradedRange } from '../grade/graded-pattern';
import { STRIDE } from '../tolerance';
import type { LengthDisplay } from '../units';
import { showLength, toMillimeters } from '../units';
import type { WalkingRoom } from '../stride/walking-room';
import { walkingRoom } from '../stride/walking-room';
import type { Finding } from './finding';

const SOURCE =
  'derived, runs a few per cent low; step: PMC2943048 table 2; ' +
  'fast steps reach 1.05 of the leg: J. NeuroEngineering and Rehabilitation 2012 9:69 table 1';

/** A finding for every size; never a failure, since who wears the skirt may know what it allows. */
export function checkStride(range: GradedRange, display: LengthDisplay): Finding[] {
  return range.sizes.map((size): Finding => {
    const room = walkingRoom(size);
    const measured = room.allowed.step;
    const held = measured >= room.wanted - STRIDE;
    return {
      severity: held ? 'ok' : 'warning',
      check: 'stride',
      size: size.label,
      piece: '',
      subject: room.opening > 0 ? 'vent' : 'hem',
      quantity: 'length',
      measured,
      expected: room.wanted,
      tolerance: STRIDE,
      source: SOURCE,
      message:
        `${allowed(room, display)}, and ${about(room.wanted, display)} is wanted, ` +
        `${stature(room, display)}${held ? '' : remedy(room, display)}; ` +
        'the model runs a few per cent low',
    };
  });
}

function allowed({ allowed: { step, level }, hem, opening }: WalkingRoom, display: LengthDisplay) {
  const above = hem - level;
  const place =
    above < STRIDE
      ? 'the hem'
      : Math.abs(above - opening) < STRIDE
        ? 'the skirt above its opening'
        : `the skirt ${about(above, display)} above its hem`;
  return `${place} allows a step of about ${about(step, display)}`;
}

function stature({ walker }: WalkingRoom, display: LengthDisplay): string {
  const known = walker.isAssumed ? 'assumed, since the chart gives none' : 'given';
  return `stature ${about(walker.stature, display)} (${known})`;
}

function remedy({ needed, opening }: WalkingRoom, display: LengthDisplay): string {
  const open = opening > 0 ? 'begin the opening' : 'open a vent from';
  return (
    ': a narrow hem shortens the stride, and stairs and curbs need more than level walking; ' +
    `${open} ${about(needed, display, Math.ceil)} above the hem or widen the hem`
  );
}

/** No step is known to more than a millimeter, or an eighth of an inch. */
function about(mm: number, display: LengthDisplay, whole = Math.round): string {
  const part = display.unit === 'in' ? toMillimeters(1 / 8, 'in') : 1;
  return showLength(part * whole(mm / part), display);
}
