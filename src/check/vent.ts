/** The vent or slit at center back: clear of the zip, above the knee, and of a usual length. */
import { present } from '../lists/present';
import type { DraftedPattern, GradedPattern, SizedPattern } from '../grade/graded-pattern';
import { draftedSizes } from '../grade/graded-pattern';
import { cornerAngle } from '../pattern/corner-angle';
import type { Piece } from '../pattern/piece';
import { panelsOf } from '../pattern/piece';
import { shopLength } from '../pattern/shop-length';
import { SAME_PLACE, SQUARE } from '../tolerance';
import type { LengthDisplay } from '../units';
import { showLength, trimmed } from '../units';
import { depthOf } from '../stride/skirt-profile';
import type { WalkedSize } from '../stride/walking-room';
import { openAboveKnee } from '../stride/walking-room';
import type { Finding } from './finding';
import { found } from './finding';

const COMMON_PRACTICE = 'common practice, no source';

/** mm of closed seam between zip and vent. */
const CLEAR_OF_ZIP = 80;

/** mm above the knee, at least, at which a study of tight skirts closed the back. */
const ABOVE_KNEE = 100;
/** mm. The height of that place; from where it was measured is not said. */
const CLOSED_AT = 260;
const ABOVE_KNEE_SOURCE =
  '"Some Function of Tight Skirt" (Japanese), cir.nii.ac.jp/crid/1050845763132163456, standard ' +
  'figure: back pleat closed at about 26 cm, at least 10 cm above the knee (abstract only)';

/** mm. Usual heights of the top above the hem. */
const USUAL = {
  vent: { least: 150, most: 300 },
  slit: { least: 100, most: 250 },
};

/** Nothing where the range has neither vent nor slit. */
export function checkVent(range: DraftedPattern, display: LengthDisplay): Finding[] {
  return present([
    ...range.sizes.flatMap((size) => ventOf(size).map((back) => clearOfZip(size, back, display))),
    ...range.sizes.flatMap((size) => ventOf(size).map((back) => hemRunsOn(size, back))),
    ...draftedSizes(range)
      .filter((size) => ventOf(size).length > 0)
      .map((size) => aboveKnee({ ...size, body: size.draft.body }, display)),
    usualLength(range, display),
  ]);
}

function ventOf({ pieces }: SizedPattern): readonly Piece[] {
  return panelsOf(pieces).filter(({ plan }) => plan.index.has('vent_top'));
}

/** Where the zip is not known, it is taken to reach the hip line, as no zip need be longer. */
function clearOfZip(
  { label, measures }: SizedPattern,
  back: Piece,
  display: LengthDisplay,
): Finding {
  const zip = measures.find(({ name }) => name === 'zip_length')?.value;
  const end = zip === undefined ? 0 : depthOf(back, 'center_waist') + zip;
  const measured = depthOf(back, 'vent_top') - end;
  const where = zip === undefined ? 'a zip down to the hip line' : 'the zip';
  const held = measured >= CLEAR_OF_ZIP - SAME_PLACE;
  return found({
    severity: held ? 'ok' : measured > 0 ? 'warning' : 'fail',
    check: 'vent-clear-of-zip',
    size: label,
    piece: back.plan.name,
    subject: 'vent_top',
    measured,
    expected: CLEAR_OF_ZIP,
    source: `${COMMON_PRACTICE}: 8 to 10 cm below the end of the zip`,
    message:
      `the vent begins ${showLength(Math.abs(measured), display)} ` +
      `${measured < 0 ? 'above' : 'below'} the end of ${where}; ` +
      `${shopLength(CLEAR_OF_ZIP, display)} of closed seam between them ` +
      `${held ? 'is enough' : 'would hold; shorten the vent, or widen or lengthen the skirt'}`,
  });
}

/** Where a vent goes on beyond the center line, so does the hem. */
function hemRunsOn({ label }: SizedPattern, back: Piece): Finding | undefined {
  if (!back.plan.index.has('vent_hem')) return undefined;
  const measured = cornerAngle(back, 'center_hem');
  const held = Math.abs(measured - 180) <= SQUARE;
  return {
    severity: held ? 'ok' : 'warning',
    check: 'vent-hem',
    size: label,
    piece: back.plan.name,
    subject: 'center_hem',
    quantity: 'angle',
    measured,
    expected: 180,
    tolerance: SQUARE,
    source: `${COMMON_PRACTICE}: the hem runs on across the fold of a vent`,
    message: held
      ? 'the hem runs on across the fold of the vent'
      : `at the fold of the vent the hem turns by ${trimmed(Math.abs(measured - 180), 1)} degrees`,
  };
}

/** What daily movement wants beyond level walking; a note, since the study is known by its abstract. */
function aboveKnee(size: SizedPattern & WalkedSize, display: LengthDisplay): Finding {
  const measured = openAboveKnee(size);
  const held = measured >= ABOVE_KNEE - SAME_PLACE;
  return found({
    severity: held ? 'ok' : 'note',
    check: 'vent-above-knee',
    size: size.label,
    piece: 'back',
    subject: 'vent_top',
    measured,
    expected: ABOVE_KNEE,
    source: ABOVE_KNEE_SOURCE,
    message:
      `the vent begins ${showLength(Math.abs(measured), display)} ` +
      `${measured < 0 ? 'below' : 'above'} the knee; a study of tight skirts closed the back at ` +
      `about ${shopLength(CLOSED_AT, display)}, at least ${shopLength(ABOVE_KNEE, display)} above ` +
      'the knee, for daily movement',
  });
}

/** One finding for the range, since the length of a vent is not graded. */
function usualLength({ sizes, plans }: GradedPattern, display: LengthDisplay): Finding | undefined {
  const lengths = sizes
    .flatMap(ventOf)
    .map((back) => depthOf(back, 'center_hem') - depthOf(back, 'vent_top'));
  const [shortest, longest] = [Math.min(...lengths), Math.max(...lengths)];
  if (lengths.length === 0) return undefined;
  const kind = plans.some(({ index }) => index.has('vent_hem')) ? 'vent' : 'slit';
  const { least, most } = USUAL[kind];
  const short = shortest < least - SAME_PLACE;
  const held = !short && longest <= most + SAME_PLACE;
  const measured = short ? shortest : longest;
  return found({
    severity: held ? 'ok' : 'note',
    check: 'vent-length',
    piece: 'back',
    subject: kind,
    measured,
    expected: short ? least : most,
    source: COMMON_PRACTICE,
    message:
      `the ${kind} begins ${showLength(measured, display)} above the hem; ` +
      `${shopLength(least, display)} to ${shopLength(most, display)} is usual`,
  });
}
