/**
 * Every tolerance of the engine, with its unit and its reason.
 *
 * Lengths are millimeters, angles degrees.
 */

/** mm. Two positions closer than this are one place to any pencil, knife or plotter. */
export const SAME_PLACE = 1e-6;

/** mm. The graded pattern must equal the redraft this closely, at points and along curves. */
export const GRADE_REPRODUCES_DRAFT = 0.01;

/** mm. Arc lengths are computed to this error or better. */
export const ARC_LENGTH = 1e-7;

/** mm. A finished measurement must meet its target this closely before rounding. */
export const MEETS_TARGET = 0.1;

/** mm. Seams sewn together may differ by this much unseen. */
export const SEAM_MATCH = 0.1;
/** mm. A sewer eases this much in without noticing (1/16 in is kept by careful makers). */
export const SEAM_WARNING = 1;
/** mm. Above this a seam pair no longer goes together (1/8 in is adequate for many sewers). */
export const SEAM_FAILURE = 3;

/** share of a rounding step. A value this near a half step counts as the half, and rounds up. */
export const HALF_STEP = 1e-9;

/** mm. A dart narrower than this is not worth sewing (common practice, no source). */
export const DART_INTAKE_LEAST = 10;
/** mm. A dart wider than this stands off at its tip; split it (common practice, no source). */
export const DART_INTAKE_MOST = 35;

/** mm. A chart's hip growth may differ this much from a published table's for one step: 1/4 in. */
export const INCREMENT_AGREES = 6.35;
/** mm. Two steps of one girth count as the same grade within this, 1/16 in: cells rounded to 1 mm
 * leave a step uncertain by 1 mm, and the finest change of grade in use is 1/8 in. */
export const SAME_STEP = 25.4 / 16;

/** mm. Truing stops when every aim is met this closely. */
export const TRUING = 1e-6;
/** Shares must add up to their sum this closely; a third is written 1/3. */
export const SAME_SUM = 1e-6;

/** degrees. A corner this near 90 degrees is square to any set square. */
export const SQUARE = 0.5;
/** degrees. A closed waist that turns by less is smooth. */
export const WAIST_TURN = 0.5;
/** mm. The legs of a dart are sewn together and may differ by this much. */
export const DART_LEGS = 0.1;
/** degrees. The axis of a dart may lean this much from the base's: 1 mm at the tip of a 12 cm dart. */
export const AXIS_TURN = 0.5;
/** mm. The fold of a pressed dart must end this near the waist seam to be caught in it. */
export const DART_FOLD = 0.1;

/** mm. No step is known more closely than this; rules rounded to 1/16 in cost about as much. */
export const STRIDE = 5;

/** mm per mm. A computed slope below this is what rounding leaves of zero. */
export const NO_SLOPE = 1e-9;
/** mm per mm. Slopes found numerically must agree this closely: 0.01 mm over a step of 100 mm. */
export const SLOPES_AGREE = 1e-4;
/** mm. A facing may be this much deeper or shallower than asked: half the width of a pencil line. */
export const FACING_DEPTH = 0.3;

/** mm. A rule on a handed-in sheet is right this closely: 1/32 in, the finest that imperial rules are
 * written in, and half of the 1/16 in that patterns are kept to (popparazi.blogspot.com, 2016-07). */
export const RULE_RIGHT = 25.4 / 32;
/** mm. Cut lines are laid out as polygons this close to them: half a chalk line. */
export const LAY_FLATNESS = 0.5;

/** mm. A fitted parallel lies this near the true one; a knife keeps to 0.05 mm at best. */
export const PARALLEL = 0.01;
/** mm. A cut line may be this much nearer to its net line than the allowance. */
export const ALLOWANCE_KEPT = 0.05;

/** mm. Points on a curve are this dense that a spline through them is the curve; half of what an
 * exchanged pattern may differ by. */
export const CURVE_POINTS = 0.004;
/** mm. An exchanged pattern comes back within this, a tenth of a pencil line's width. */
export const EXCHANGED = 0.01;

/** mm. Ends of lines of a drawing this near are joined: points rounded to 0.01 in miss each other by
 * up to 0.36 mm. */
export const JOIN_GAP = 0.4;
/** mm. The number of a rule belongs to a point this near without a word. */
export const RULE_AT = 0.1;
/** mm. With a word, up to this: four times what rounding to 0.01 in does. */
export const RULE_BESIDE = 1;
/** mm. A curve inside a piece is drawn as chords this near to it. */
export const INSIDE_FLATNESS = 0.05;
/** mm. The largest side of a piece is no shorter and no longer, in whatever unit it was drawn. */
export const PIECE_LEAST = 30;
export const PIECE_MOST = 5000;
/** mm. A whole pattern of which every piece is shorter is rather ten times as large, in centimeters. */
export const PATTERN_LEAST = 200;
