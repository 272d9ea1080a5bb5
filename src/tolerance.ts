/**
 * Every tolerance of the engine, with its unit and its reason.
 *
 * Lengths are millimeters, angles degrees.
 */
import { toMillimeters } from './units';

/** mm. Two positions closer than this are one place to any pencil, knife or plotter. */
export const SAME_PLACE = 1e-6;

/** mm, or share of a step. What the arithmetic of doubles alone leaves of nothing. */
export const ARITHMETIC = 1e-9;
/** Share of a curve, 0 to 1. Bisection along it ends here, at some fifty times what doubles tell apart. */
export const BISECTED = 1e-14;
/** Share of a curve. A shorter part is its own chord: even of a meter it is no longer than a micron. */
export const SHORTEST_PART = 1e-6;
/** Sine of an angle. Lines that turn by less from each other are parallel, and where they cross is
 * left to rounding. */
export const PARALLEL_LINES = 1e-12;
/** mm. A part of a curve whose handles lie this near its chord is taken for the chord where a
 * crossing is first looked for; it is then found on the curve itself. */
export const CHORD_FLATNESS = 1e-3;
/** mm. A place that was fitted or cut out lies this near where it belongs: ends are joined, and a
 * point lies on a fold, within it. */
export const COMPUTED_PLACE = 1e-3;
/** mm. This far to either side of a line it is tried what lies beside it: clear of SAME_PLACE, and
 * thinner than anything that is cut. */
export const BESIDE_LINE = 1e-4;

/** mm. The graded pattern must equal the redraft this closely, at points and along curves. */
export const GRADE_REPRODUCES_DRAFT = 0.01;

/** mm. Arc lengths are computed to this error or better. */
export const ARC_LENGTH = 1e-7;

/** mm. A finished measurement must meet its target this closely before rounding. */
export const MEETS_TARGET = 0.1;

/** mm. Lines of sizes nearer than this touch as they are drawn, the base 0.8 mm wide. */
export const LINES_APART = 0.8;
/** mm. Leaders of marks nearer than this lie on each other as they are drawn. */
export const LEADERS_TOGETHER = 0.5;
/** mm. Whoever cuts along any of lines that lie within this cuts well enough: 1/16 in is kept by careful
 * makers. */
export const LINES_TOGETHER = 1.5;
/** mm. Seams sewn together may differ by this much unseen. */
export const SEAM_MATCH = 0.1;
/** mm. A sewer eases this much in without noticing (1/16 in is kept by careful makers). */
export const SEAM_WARNING = 1;
/** mm. Above this a seam pair no longer goes together (1/8 in is adequate for many sewers). */
export const SEAM_FAILURE = 3;

/** mm. A seam that opens by more in the grade is looked at for a slip in its rules: three times what
 * is never seen, so that rounding opens none, and far below what a sewer eases in. */
export const SEAM_TELLS = 3 * SEAM_MATCH;
/** Share of the whole growth. Steps have the same proportions within this: 0.1 mm in 5 cm. */
export const STEP_SHAPE = 0.002;
/** nats. A cause is stated only if the evidence speaks for it this much: 400 to 1, were the
 * scores odds; they are set by planted slips. */
export const CAUSE_TOLD_BY = 6;
/** nats. A cause is stated only if no other explains the evidence within this: 20 to 1,
 * were the scores odds. */
export const CAUSE_CLEAR_BY = 3;
/** nats. At one point a slip is stated with its particulars if they are this much likelier, 2 to 1,
 * than others of its kind: either way the rule is looked at. */
export const KIND_CLEAR_BY = 0.7;
/** nats. Steps of which less speaks against their being regular are not held against any other shape. */
export const NOTHING_ODD = 0.1;
/** nats. Without a seam that opens, the steps of a point or those beside it are asked for a slip where
 * this much speaks against them, some 150 to 1. */
export const RULES_TELL_BY = 5;
/** Share of a gap. A cause that leaves more of it than a tenth does not explain it. */
export const GAP_LEFT = 0.1;
/** Share of a move by which it may lie outside those beside it and still go with them: a tenth, more
 * than rounding makes of it, less than any sign. */
export const GOES_WITH = 0.1;
/** mm. The least move that anybody types; the finest step in use, 1/32 in, is larger. */
export const LEAST_TYPED = 0.5;
/** mm. A rule is changed by this to see how a gap follows: far above rounding, far below a rule. */
export const RULE_PROBE = 0.01;
/** Square of mm per mm. A gap that follows a rule by less than a tenth of it is not closed by it. */
export const GAP_FOLLOWS = 0.01;
/** Factor. Points whose changes differ in length by no more than 2 % close a gap equally well. */
export const ALIKE_CHANGES = 1.02;

/** share of a rounding step. A value this near a half step counts as the half, and rounds up. */
export const HALF_STEP = 1e-9;
/** mm squared. A choice of grid lines that is better by less is no better, so that equal choices do not
 * chase each other. */
export const GRID_GAIN = 1e-6;
/** mm per mm. A sum of lengths that follows a level of the grid by less is not mended by it. */
export const SUM_FOLLOWS = 1e-3;

/** mm. A dart narrower than 1 cm, or where inches are used 3/8 in, is not worth sewing (common practice,
 * no source); the narrower of the two. */
export const DART_INTAKE_LEAST = 9.525;
/** mm. A dart wider than this stands off at its tip; split it (common practice, no source). Styles that
 * choose the number of darts have a limit of their own, which goes first. */
export const DART_INTAKE_MOST = 35;

/** share of the step. A chart's hip growth may differ this much from a published table's for the
 * same waist growth, and by `SAME_STEP` at least: 1/4 in for a step of 1 in, 5/8 in for 2 1/2 in. */
export const INCREMENT_AGREES = 0.25;
/** Share of the largest other step. An end step beyond it leaps: no break of a published table makes a step
 * more than twice the one before. */
export const LEAP = 2.5;
/** mm. Two cells are one figure within this: an inch written in cm to one decimal. */
export const SAME_CELL = 0.5;
/** Share of what the sizes beside a value make likely. What was probably meant by it comes this near. */
export const LIKELY_MEANING = 0.1;
/** Share of a value. Where a row hardly grows (a height, a hip depth) one may be this far off what the
 * sizes beside it make likely. */
export const OFF_NEIGHBORS = 0.2;
/** Share of a value. The same where two sizes alone are beside it: they agree on any line. */
export const OFF_TWO_NEIGHBORS = 0.5;
/** mm. Two steps of one girth count as the same grade within this, 1/16 in: cells rounded to 1 mm
 * leave a step uncertain by 1 mm, and the finest change of grade in use is 1/8 in. */
export const SAME_STEP = toMillimeters(1 / 16, 'in');
/** mm. Two steps of a point count as the same within a quarter of that: a quarter of a girth is graded. */
export const SAME_POINT_STEP = SAME_STEP / 4;

/** mm. Truing stops when every aim is met this closely. */
export const TRUING = 1e-6;
/** mm. Unknowns of truing are probed by this: far above rounding and far below a dart. */
export const TRUING_PROBE = 1e-3;
/** Share of a step of truing below which it no longer leads anywhere. */
export const LEAST_SHARE = 1e-4;
/** Shares must add up to their sum this closely; a third is written 1/3. */
export const SAME_SUM = 1e-6;

/** degrees. A corner this near 90 degrees is square to any set square. */
export const SQUARE = 0.5;
/** degrees. An edge that turns by less across a closed dart or a seam runs on: two corners, each as
 * nearly square to what is sewn as a set square tells. */
export const EDGE_TURN = 2 * SQUARE;
/** degrees. How far the direction of that waist may turn back, from any place to a later one, against
 * the way in which it bends: over the third of a panel between two darts, some 6 cm, a wave of 2.5
 * degrees is as deep as WAIST_WAVE allows. */
export const WAIST_TURNS_BACK = 2.5;
/** mm. How deep a dip of that waist may lie below a string drawn tight over it: the width of a pencil
 * line, which no knife follows. */
export const WAIST_WAVE = 0.3;
/** degrees. Grainlines of two sizes this near to parallel are drawn as one: 2 mm over a meter, less than
 * cloth is laid straight. */
export const PARALLEL_GRAIN = 0.1;
/** degrees. A corner that turns by less is none: 0.1 mm beside a straight side of 60 cm. */
export const CORNER_SEEN = 0.01;
/** degrees per cm. A bend of a side seam that turns by more, a radius of 13 cm, shows as a corner: a
 * hip curve that takes in 5 cm over 20 cm turns by 1.5 at the hip line. */
export const SIDE_BEND = 4.5;
/** degrees. A side seam that turns by more at one point does not bend but fold back. */
export const SIDE_FOLDS = 45;
/** mm. Points of a fold that part by more from their line can no longer be laid on the fold of the
 * cloth: opened out, the piece is off by twice as much. */
export const FOLD_LINE = 1;
/** degrees. Corners that meet across a seam and are farther from 180 in the base are drawn so: no edge
 * runs on there. A straight waist over a full hip, which wants to be trued, is off by up to 56. */
export const RUNS_ACROSS = 60;
/** degrees. Where an outline turns by more, it is at a corner that a grader rules, not at a place of a
 * curve drawn by points. */
export const CORNER_WANTS_RULE = 30;
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
/** Share of the largest eigenvalue. Below it equations leave a direction open; what rounding leaves
 * of zero is smaller, what a sheet tells is larger. */
export const OPEN_DIRECTION = 1e-9;
/** mm. A point of measure that grows by less from size to size is not graded: half of what a tape
 * shows, and what a side that is trued leaves. */
export const NO_STEP = 0.5;
/** Square of a cosine. An unknown is known if open directions have no more of it than this. */
export const FREEDOM = 1e-6;
/** mm. The products of a derived step add up to the move of the drafts within this, a thousand times
 * what truing leaves: the last digit that is shown is larger. */
export const STEPS_ADD_UP = 1000 * SAME_PLACE;
/** mm. A facing may be this much deeper or shallower than asked: half the width of a pencil line. */
export const FACING_DEPTH = 0.3;

/** mm. A rule on a handed-in sheet is right this closely: 1/32 in, in which increments in inches are
 * written (popparazi.blogspot.com, 2016-07), and half of the 1/16 in to which a pattern maker keeps her
 * patterns (Threads magazine no. 200). */
export const RULE_RIGHT = toMillimeters(1 / 32, 'in');
/** Share of the space between two marks of a ruler within which a number lies on a mark. Inches are typed with
 * four places at least, which puts 1/32 off its mark by less than this share of it. */
export const ON_MARK = 0.01;
/** Share of a right number by which a tenth of a wrong one may miss it: 1.9 cm typed for 1.875. */
export const TENFOLD = 0.05;
/** mm. Decimals as people type them differ from the exact fractions by less. */
export const TYPED_DECIMALS = 0.02;
/** mm. Of slips that fit, one that gives the cells to a hundredth is believed before the others. */
export const EXACT_SLIP = 0.01;
/** Share, 0 to 1. A cause of wrong numbers is told only where more than this of the cells that it would
 * turn are as it would have them: one that fits fewer has met them by chance. */
export const EXPLAINS_MOST = 0.5;
/** Share, 0 to 1. A sheet that leaves more than this of its cells blank is marked by what it gives. */
export const MOSTLY_BLANK = 0.5;
/** mm. Cells that leave as little contradiction when left out as each other, within a quarter of what a
 * right rule may be off, are equally to blame. */
export const TIED_CELLS = RULE_RIGHT / 4;
/** mm. A move and the steps that lead to it agree within this: three numbers of a rule sheet, each
 * written to 0.001 mm. */
export const RULES_AGREE = 0.002;
/** mm. Cut lines are laid out as polygons this close to them: half a chalk line. */
export const LAY_FLATNESS = 0.5;
/** mm. A lay is not shortened by less: cloth is bought in steps of 50 mm and more. */
export const LAY_STEP = 4;
/** Share of a lay's length within which it must fit otherwise, or is not shortened at all. */
export const LAY_GAIN = 0.98;

/** mm. A fitted parallel lies this near the true one; a knife keeps to 0.05 mm at best. */
export const PARALLEL = 0.01;
/** mm. A cut line may be this much nearer to its net line than the allowance. */
export const ALLOWANCE_KEPT = 0.05;
/** mm. A gap this small between two ends of a cut line is closed by moving one of them: twice what
 * a fitted parallel may be off. */
export const CUT_GAP = 0.02;
/** mm. Cut lines that a turn parts by less run on as one, and a cut that small cannot be found. */
export const CUT_TURN = 0.01;
/** mm. Ends of cut lines that overlap by less, the width of a pencil line, are joined in their middle. */
export const CUT_OVERLAP = 0.5;
/** mm from the end of a seam without allowance within which the cut line may meet the sewing line. */
export const BARE_END = 0.2;

/** mm. Points on a curve are this dense that a spline through them is the curve; half of what an
 * exchanged pattern may differ by. */
export const CURVE_POINTS = 0.004;
/** mm. A tape is read to a sixteenth of an inch: sizes that lie off a line by less lie on it. */
export const TAPE_READING = toMillimeters(1 / 16, 'in');
/** Factor. A size of a sample lies off the line of the others where it does so this many times as far as any. */
export const OUTLYING = 3;
/** mm. A curve point that its neighbors move this near to its place goes without a rule; with the density of
 * such points no more than an exchanged pattern may differ by. */
export const FOLLOWED = 0.004;
/** mm. An exchanged pattern comes back within this, a tenth of a pencil line's width. */
export const EXCHANGED = 0.01;
/** mm. Places of a graded line nearer than this are one, and a landmark no farther from it is on it. */
export const SAME_LANDMARK = 0.05;
/** degrees. A parallel curve that is put together from several turns by less where they meet. */
export const PARALLEL_TURN = 0.5;
/** degrees. A notch at which two straight edges turn by less stands on one straight edge: 0.1 mm over
 * half a meter. */
export const RUNS_STRAIGHT = 0.01;

/** mm. Ends of lines of a drawing this near are joined: points rounded to 0.01 in miss each other by
 * up to 0.36 mm. */
export const JOIN_GAP = 0.4;
/** Share, or radians. Scales, tilts and turns of a drawing that differ by less are one that was rounded
 * when it was written. */
export const DRAWN_ALIKE = 1e-6;
/** Tangent of a quarter of an angle. An arc that bends by less is its chord: flatter than any pencil sees,
 * its center would be farther away than numbers reach. */
export const NO_BULGE = 1e-9;
/** degrees. Where two stretches of a spline meet and turn by less it runs on. */
export const SPLINE_RUNS_ON = 0.1;
/** Share of a side. A block is larger than another by more; rounding makes less of it. */
export const BLOCK_LARGER = 1e-4;
/** Cosine between what two blocks differ by and what rules do: alike but for a grade that breaks. */
export const GROWS_ALONG = 0.9;
/** Share of the larger side by which a block is larger than the size before it, at most. */
export const BLOCK_STEP_MOST = 0.05;
/** Factor. Of two steps from size to size the longer is at most so many times the shorter, as where a
 * grade breaks. */
export const BLOCK_STEPS_ALIKE = 2.5;
/** mm. The number of a rule belongs to a point this near without a word. */
export const RULE_AT = 0.1;
/** mm. With a word, up to this: four times what rounding to 0.01 in does. */
export const RULE_BESIDE = 1;
/** mm. A notch this near to a sewing line, the width of a pencil line, is on it. */
export const SEWN_PLACE = 0.5;
/** mm. A curve inside a piece is drawn as chords this near to it. */
export const INSIDE_FLATNESS = 0.05;
/** mm. The largest side of a piece is no shorter, in whatever unit it was drawn. */
export const PIECE_LEAST = 30;
/** mm. The largest side of a piece is no longer, in whatever unit it was drawn. */
export const PIECE_MOST = 5000;
/** mm. A whole pattern of which every piece is shorter is rather ten times as large, in centimeters. */
export const PATTERN_LEAST = 200;
/** mm. Lengths of two written tables that differ by less are one length, rounded in two units. */
export const WRITTEN_ALIKE = 0.001;
/** mm. Lines to cut whose length differs by less, or which lie apart by less, are one, drawn twice. */
export const CUT_ALIKE = 0.02;
/** mm, degrees or plain numbers. Figures of findings that differ by less read the same. */
export const SHOWN_ALIKE = 0.05;
/** mm. A notch of a typed pattern may lie this far beside its straight edge, as places rounded to a
 * sixteenth of an inch do. */
export const NOTCH_OFF = 1.2;
/** mm. An allowance this near to a whole number of half millimeters, or of thirty-seconds of an inch,
 * was set in that unit and is said as it is. */
export const SAME_AS_TYPED = 0.001;
/** What a shop gives away for a round number when it names an allowance in the other unit: 1 mm, or of
 * longer ones a share (1 1/4 in is called 3 cm). Common practice, no source. */
export const AS_ROUND = { mm: 1, share: 0.06 } as const;
/** Share of a value of a chart by which it must leave both its neighbors, where its row is steady without it. */
export const OFF_STEADY = 0.05;
