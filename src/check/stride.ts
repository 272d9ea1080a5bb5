/** Room to walk: the step that the skirt allows in every size, against the one that is wanted. */
import { present } from '../lists/present';
import type { Style } from '../draft/styles';
import { STYLES } from '../draft/styles';
import type { DraftedPattern } from '../grade/graded-pattern';
import { draftedSizes } from '../grade/graded-pattern';
import { STRIDE } from '../tolerance';
import type { LengthDisplay } from '../units';
import { showLength, toMillimeters } from '../units';
import type { WalkingRoom } from '../stride/walking-room';
import { walkingRoom } from '../stride/walking-room';
import type { Finding } from './finding';
import { found } from './finding';

const SOURCE =
  'derived: a taut band round two legs, set to allow a body of 164 cm with a hip of 95 cm no ' +
  'more than 67 cm in five girths of a textbook table (from memory, unverified), so for her it errs ' +
  'short; ' +
  'step: PMC2943048 table 2, the upper of 0.422 to 0.433 of stature; ' +
  'fast steps reach 1.05 of the leg: J. NeuroEngineering and Rehabilitation 2012 9:69 table 1';

/** Findings for every size; never a failure, since who wears the skirt may know what it allows. */
export function checkStride(range: DraftedPattern, display: LengthDisplay): Finding[] {
  const vented = ventedStyle(range);
  const rooms = draftedSizes(range).map((size) => ({
    size: size.label,
    room: walkingRoom({ ...size, body: size.draft.body }),
  }));
  return present([
    ...rooms.map(({ size, room }) => levelWalking(size, room, vented, display)),
    ...rooms.map(({ size, room }) => kneeGirth(size, room, display)),
  ]);
}

/** A style to take for a vent, where that of the range has none to open. */
function ventedStyle({ draft: { style } }: DraftedPattern): string | undefined {
  const opens = ({ block }: Style): boolean => block.parameters.some(({ name }) => name === VENT);
  return opens(style) ? undefined : STYLES.findLast((one) => opens(one) && isOpened(one))?.name;
}

const VENT = 'vent_length';

function isOpened({ settings }: Style): boolean {
  return settings.some(({ parameter, value }) => parameter === VENT && value === 'stride_opening');
}

function levelWalking(
  size: string,
  room: WalkingRoom,
  vented: string | undefined,
  display: LengthDisplay,
): Finding {
  const measured = room.allowed.step;
  const held = measured >= room.wanted - STRIDE;
  return found({
    severity: held ? 'ok' : 'warning',
    check: 'stride',
    size,
    subject: room.opening > 0 ? 'vent' : 'hem',
    // A step that nothing holds is no measurement.
    measured: Number.isFinite(measured) ? measured : undefined,
    expected: room.wanted,
    tolerance: STRIDE,
    source: SOURCE,
    message:
      `${allowed(room, display)}, and ${about(room.wanted, display)} is wanted, ` +
      stature(room, display) +
      (held ? '; stairs and curbs need more' : remedy(room, vented, display)) +
      (Number.isFinite(measured)
        ? '; the step is a careful figure that errs short, or up to 2 cm long on slim hips'
        : ''),
    ...(held || !helps(room)
      ? {}
      : {
          facts: {
            [room.opening > 0 ? 'begin' : 'open']: aboutLength(openedTo(room), display, Math.ceil),
            ...(vented === undefined ? {} : { vented }),
          },
        }),
  });
}

function allowed({ allowed: stride, hem, opening }: WalkingRoom, display: LengthDisplay): string {
  const above = hem - stride.level;
  const place =
    above < STRIDE
      ? 'the hem'
      : Math.abs(above - opening) < STRIDE
        ? 'the skirt above its opening'
        : `the skirt ${about(above, display)} above its hem`;
  if (stride.step === 0)
    return `${place} is narrower than both legs side by side and allows no step`;
  if (!Number.isFinite(stride.step)) return 'the skirt does not limit the step';
  const best = Number.isFinite(stride.atBest)
    ? `${about(stride.atBest, display)} at the very best`
    : 'at the very best it does not limit the step';
  const spread = stride.atBest > stride.step ? ` (${best})` : '';
  return `${place} allows a step of about ${about(stride.step, display, Math.floor)}${spread}`;
}

function stature({ walker }: WalkingRoom, display: LengthDisplay): string {
  const known = walker.isAssumed ? 'assumed, since the chart gives none' : 'given';
  return `stature ${about(walker.stature, display)} (${known})`;
}

function remedy(room: WalkingRoom, vented: string | undefined, display: LengthDisplay): string {
  const { opening } = room;
  const height = `${about(openedTo(room), display, Math.ceil)} above the hem`;
  const act =
    vented !== undefined
      ? `widen the hem (less hem_taper), or take a style with a vent, such as ${vented}, open from ${height}`
      : `${opening > 0 ? 'begin the opening' : 'open a vent from'} ${height} or widen the hem`;
  return (
    ': a narrow hem shortens the stride, and stairs and curbs need more than level walking; ' +
    (helps(room) ? act : 'no opening gives the room, so widen the skirt')
  );
}

/** mm. A vent or slit that is shorter hardly opens: common practice, no source. */
const LEAST_OPENING = 100;

/** mm above the hem from which to open it: as much as is needed, and no vent too short to be of use. */
function openedTo({ needed, opening }: WalkingRoom): number {
  return opening > 0 ? needed : Math.max(needed, LEAST_OPENING);
}

/** An opening ends below the crotch; where it would have to go higher, it gives no room. */
function helps({ needed, hem, walker }: WalkingRoom): boolean {
  return hem - needed >= walker.crotch;
}

/** mm. Girth of the hem at knee level in the study that `KNEE_SOURCE` names. */
const FREE_KNEE = 1250;
const KNEE_SOURCE =
  '"Some Function of Tight Skirt" (Japanese), cir.nii.ac.jp/crid/1050845763132163456, standard ' +
  'figure: about 125 cm (abstract only)';

/** What stairs and buses want beyond level walking; nothing where the knee is free. */
function kneeGirth(size: string, room: WalkingRoom, display: LengthDisplay): Finding | undefined {
  const measured = room.kneeGirth;
  if (measured === undefined) return undefined;
  const held = measured >= FREE_KNEE - STRIDE;
  return found({
    severity: held ? 'ok' : 'note',
    check: 'knee-girth',
    size,
    subject: 'knee',
    measured,
    expected: FREE_KNEE,
    tolerance: STRIDE,
    source: KNEE_SOURCE,
    message:
      `round the knee, ${about(room.hem - room.walker.knee, display)} above the hem, the skirt ` +
      `measures ${about(measured, display)}; in a study of tight skirts about ` +
      `${about(FREE_KNEE, display)} at the knee did not hinder daily movement, and stairs and ` +
      'buses want that beyond level walking',
  });
}

/** No step is known to more than a millimeter, or an eighth of an inch. */
function about(mm: number, display: LengthDisplay, whole = Math.round): string {
  return showLength(aboutLength(mm, display, whole), display);
}

function aboutLength(
  mm: number,
  { unit }: LengthDisplay,
  whole: (value: number) => number,
): number {
  const part = unit === 'in' ? toMillimeters(1 / 8, 'in') : 1;
  return part * whole(mm / part);
}
