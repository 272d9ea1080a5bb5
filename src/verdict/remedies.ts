/** What to do about what each check says: a line a check, in words for somebody who can act. */

/** What is done about the findings of one check. */
export interface Remedy {
  /**
   * Sentences without capital and full stop, the most special first; the first all of whose braces the
   * findings can fill is taken. `{pieces}`, `{subjects}`, `{measured}`, `{expected}`, `{most}` (what lies
   * between measured and expected at most) and the names of `facts`.
   */
  readonly act: readonly string[];
  /** The same for what is only noted; `act` if absent. */
  readonly note?: string;
  /** The cause by which checks go together, a name of `CAUSES`; the check alone if absent. */
  readonly cause?: Cause;
  /** What has a decision of its own: each piece, each subject of a piece, or each row of the chart. */
  readonly each?: 'piece' | 'subject' | 'row';
}

/** What mends several checks at once, said where more than one of them speaks. */
export const CAUSES = {
  truing:
    'true the edges by hand before you cut: fold the darts, join the sides and draw waist and hem ' +
    'through without corners',
  rounding: 'take a smaller step of rounding, or let the sewer ease in what it leaves',
  vent: 'place the vent anew: shorten it, or lengthen the skirt',
  program: 'do not cut; this is a fault of the program, so report it with the chart and the style',
  sample: 'measure the sample once more, then mend the base or its making',
} as const;

/** A name of `CAUSES`. */
export type Cause = keyof typeof CAUSES;

const RECORD = 'nothing; for your records';
const ROW = 'hold the row {subjects} of the chart against its source';
const REDRAWN = 'do it in the drawing and save it again';

/** By the name of the check. */
export const REMEDIES: Readonly<Record<string, Remedy>> = {
  // Seams and rules.
  'seam-lengths': {
    act: [
      'mend the base or the rules of {pieces}: the seam {subjects} is up to {most} apart',
      'mend the base or the rules: the seam {subjects} is apart',
    ],
    each: 'piece',
  },
  'notch-to-notch': {
    act: ['move the notches of {subjects}: between them the sides differ by up to {most}'],
    each: 'piece',
  },
  'notches-match': { act: ['give both sides of {subjects} the same number of notches'] },
  'wrong-sign': { act: ['turn the sign of the rule of {pieces} {subjects}'], each: 'subject' },
  'rule-slip': {
    act: ['mend the rule of {pieces} {subjects}, as its finding says'],
    each: 'subject',
  },
  'rule-doubt': {
    act: [
      'look at the rules of {places}: they set the seam {subjects} apart',
      'look at the rules of {pieces}: they set the seam {subjects} apart',
    ],
    each: 'subject',
  },
  'point-unruled': {
    act: ['give {subjects} of {pieces} a rule, 0 where it stays'],
    note: 'nothing if it may go with the points beside it; else give it a rule',
    each: 'piece',
  },
  'piece-unruled': { act: ['give the points of {pieces} rules, or cut it in one size'] },
  'piece-shifted': { act: ['give {subjects} of {pieces} rules, 0 where they stay'] },
  'step-turns': {
    act: ['look at the signs of the rules of {subjects} on {pieces}'],
    each: 'piece',
  },
  'pattern-size': {
    act: [
      'measure {pieces} on paper: as read, {measured} long; if that is not so, mend the unit in {subjects}',
    ],
  },
  'nothing-grows': { act: ['give the sizes different measures or rules; now all are the same'] },
  'identical-sizes': {
    act: [
      'they come out as {same}; if {rules} holds steps from size to size, call them step_dx and step_dy, or write them as ' +
        'moves from the base, as which they are read now; else one size is enough',
      'they come out as {same}; one size is enough, or the chart lacks what is to differ',
    ],
  },
  'alike-sizes': {
    act: [
      'nearly all points lie as in the next size: if {rules} holds steps from size to size, call them step_dx ' +
        'and step_dy, or write them as moves from the base',
    ],
  },
  'identical-measurements': {
    act: [
      'the chart has {same}; one size is enough, or hold their measurements against the source',
    ],
  },
  'fold-straight': { act: ['let all points of the fold of {pieces} move alike across it'] },
  'seam-unpaired': {
    act: ['nothing if {subjects} is sewn to nothing; else say what it is sewn to'],
  },
  'larger-is-smaller': {
    act: [
      'look for rules of {pieces} with a wrong sign: larger sizes have less {subjects}',
      `${ROW}: larger sizes get smaller`,
    ],
    each: 'row',
  },
  // The chart.
  'length-falls': { act: [`${ROW}: is it the right way round`], each: 'row' },
  'measurement-range': {
    act: [`${ROW}, and look at its unit: no adult is like that`],
    each: 'row',
  },
  'leaping-step': { act: [`${ROW}: one step leaps by {measured}`], each: 'row' },
  'uneven-steps': { act: [`${ROW}: its steps go up and down`], note: RECORD, each: 'row' },
  'girth-not-growing': { act: [`${ROW}: it stays while the other girth grows`], each: 'row' },
  'hip-below-waist': { act: [`${ROW}: the hip is smaller than the waist`], each: 'row' },
  'waist-to-hip-grade': {
    act: [`${ROW}: the depth grows by {measured} for 1 of hip, on bodies by {expected}`],
    note: RECORD,
    each: 'row',
  },
  'range-against-standard': {
    act: [
      'decide whether your hips may differ from {subjects}: some sizes would change their label',
    ],
    note: RECORD,
  },
  'step-against-standard': { act: [RECORD] },
  'drop-against-standard': { act: [RECORD] },
  'beyond-standard': { act: [RECORD] },
  'same-as-standard': { act: [RECORD] },
  'nearest-standard': { act: [RECORD] },
  'grade-break': { act: ['nothing if the break is meant; else hold the row against its source'] },
  'breaks-differ': { act: [RECORD] },
  'drop-changes': { act: ['nothing; darts and sides have another share in these sizes'] },
  layout: { act: [RECORD] },
  'size-order': { act: [RECORD] },
  'not-read': { act: ['check that {place} does not change how cells count'] },
  'read-as': { act: ['nothing if the label means {subjects}; else call the row otherwise'] },
  'incomplete-row': {
    act: ['fill in the missing cells of {subjects}, or take the rows away: a style may need them'],
  },
  'unknown-row': {
    act: [
      'call the row {subjects} by the name of a known measurement, or take it out: it is not used',
    ],
    note: 'nothing if the row may be passed over; else call it by a known name',
  },
  // Girths and darts.
  'finished-girth': {
    act: [
      'take cloth that stretches, or set more ease: the {subjects} is {ease} smaller than the body',
      'do not cut: the {subjects} misses body plus ease by up to {most}',
    ],
    note: RECORD,
  },
  'band-ease': { act: ['set waist_ease to 1 cm (3/8 in) or more: the closed band has no ease'] },
  'dart-number': {
    act: [
      'the {pieces} wants {darts} in each half; split the range {breaks}, or {setting}',
      'the {pieces} wants {darts} in each half: {setting}',
    ],
    each: 'piece',
  },
  'dart-intake': {
    act: ['a dart of the {pieces} takes in {measured}: {setting}'],
    each: 'piece',
  },
  darts: { act: [RECORD] },
  'darts-apart': { act: ['set fewer or narrower darts: on the {pieces} they touch or cross'] },
  'dart-above-hip': { act: ['shorten the darts of the {pieces}: they reach the hip line'] },
  'dart-legs': { act: ['draw the legs of {subjects} on {pieces} equally long'], each: 'piece' },
  'dart-axis': { act: ['move tip and legs of {subjects} on {pieces} together'] },
  'dart-fold': {
    act: ['do not cut: fold the darts of {pieces} on paper and cut the waist through'],
  },
  'edge-over-dart': {
    act: ['fold the darts of {pieces} and true the edge over them by hand before you cut'],
    cause: 'truing',
  },
  'closed-waist': {
    act: ['fold the darts, join the sides and true the waist by hand before you cut'],
    cause: 'truing',
  },
  'corners-across-seam': {
    act: ['join the seam and true the edge across it by hand before you cut: {subjects}'],
    note: 'nothing if the base is meant so; else join the seam and true the edge across it by hand',
    cause: 'truing',
  },
  untrued: {
    act: [
      'set trued=1, which draws waist, side and hem without corners; or true them by hand before you ' +
        'cut: fold the darts, join the sides, draw through',
    ],
  },
  'side-take-up': {
    act: ['make the darts of the {pieces} narrower: the side leans out at the waist'],
  },
  'side-direction': {
    act: ['do not cut: the side of {pieces} folds back; lengthen or widen the skirt'],
    note: 'round the side seam of {pieces} off by hand over some 10 cm (4 in)',
  },
  truing: { act: ['do not cut: {subjects} of {pieces} could not be trued; change the style'] },
  'vent-hem': {
    act: ['square the hem of {pieces} at the fold of the vent by hand'],
    cause: 'truing',
  },
  // Walking, vent, zip, lining, facing.
  stride: {
    act: [
      'the hem allows a step of {measured}, {expected} are wanted; widen the hem (less hem_taper), or take a style with a vent, such as {vented}, open {open} high',
      'the hem allows a step of {measured}, {expected} are wanted; open a vent {open} high, or widen the hem',
      'the skirt allows a step of {measured}, {expected} are wanted; begin the opening {begin} above the hem',
      'the skirt allows a step of {measured}, {expected} are wanted; widen it',
    ],
  },
  'knee-girth': { act: ['tell the wearer that stairs want a wider hem or a vent'] },
  'vent-clear-of-zip': {
    act: ['shorten the vent: {measured} of closed seam to the zip, {expected} hold'],
    cause: 'vent',
  },
  'vent-above-knee': { act: ['nothing, or begin the vent higher for stairs'], cause: 'vent' },
  'vent-length': { act: ['nothing if the length is meant; {expected} is usual'], cause: 'vent' },
  'zip-length': {
    act: ['take a zip of {expected} or longer, or the waist does not pass the hip'],
    note: 'nothing, or take a shorter zip: it ends below the hip line',
  },
  'lining-hip': {
    act: ['set more lining_hip_room: the lining has {measured}, {expected} are wanted'],
  },
  'facing-depth': { act: ['draw the lower edge of {pieces} {expected} from the waist'] },
  // Lines.
  'length-line': {
    act: ['do not lengthen at this line in these sizes: a dart, zip or vent is too near'],
    note: 'lengthen or shorten at the hem: no place is clear for a line',
  },
  'far-from-base': {
    act: ['grade {far} from a base of their own, such as {base}: they are far from this one'],
    note: RECORD,
  },
  'outline-simple': { act: ['do not cut: the outline of {pieces} crosses itself at {subjects}'] },
  'cut-line': {
    act: ['set smaller allowances, or do not cut: the cut line of {pieces} is too near'],
  },
  'cut-width': { act: ['give the cut line of {pieces} the rules of its sewing line'] },
  'cut-crosses': { act: ['give the cut line of {pieces} rules: it crosses the sewing line'] },
  'cut-unruled': { act: ['give the boundary of {pieces} the rules of its sewing line'] },
  'turn-up': {
    act: ['shape the hem allowance of {pieces} by hand: folded up it misses by {most}'],
  },
  // Rounding and the grade itself.
  rounding: { act: [CAUSES.rounding], note: RECORD, cause: 'rounding' },
  'rounded-points': { act: [RECORD] },
  'graded-equals-draft': { act: [CAUSES.program], cause: 'program' },
  'rule-formula': { act: [CAUSES.program], cause: 'program' },
  // Spec and sample.
  'tolerance-overlap': {
    act: ['narrow the tolerance of {subjects}, or neighboring sizes overlap'],
  },
  sample: {
    act: ['{subjects} of the sample is out of tolerance: mend its making or the base'],
    cause: 'sample',
  },
  'sample-fit': {
    act: ['mend base or grade at {subjects}, as the finding says'],
    note: RECORD,
    cause: 'sample',
  },
  // Drawings.
  'left-out': {
    act: [
      'decide whether what was left out of {pieces} matters',
      'decide whether what was left out matters',
    ],
    note: RECORD,
  },
  'gap-closed': { act: [`nothing if the lines were to meet; else ${REDRAWN}`] },
  placed: { act: ['look whether {pieces} is placed and turned as you mean it'] },
  nest: { act: ['take the sample size alone if these are sizes of one piece'] },
  'notch-beside': { act: [`put the notch of {pieces} on its line: ${REDRAWN}`] },
  'rule-beside': { act: [`put rules and marks of {pieces} on their points: ${REDRAWN}`] },
  'unit-doubt': { act: ['say the unit of the drawing by its name and measure the largest piece'] },
  exchange: {
    act: ['cut {pieces} from the drawing with cut lines, not from the exchange file'],
    note: RECORD,
  },
  'exchange-seams': { act: ['tell whoever reads the file what is sewn to what'], note: RECORD },
};
