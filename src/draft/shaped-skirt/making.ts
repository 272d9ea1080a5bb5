/** How each curve of the shaped skirt is made, in words by which a hand can make it again. */
import type { Making } from '../block';

/** From the waist to the hem, as a hand draws them. */
export const SHAPED_MAKING: readonly Making[] = [
  {
    line: 'dart',
    words:
      'its middle stands at its share of the waist edge, darts open; its mouth is a straight line ' +
      'square to its axis (level with axis_square = 0), its tip lies its length along the axis from ' +
      'the middle of the mouth, so both legs are equally long. Its height is that of the waist: with ' +
      'the darts nearer the center closed, the edge from the center or the dart before meets its ' +
      'inner leg.',
  },
  {
    line: 'waist',
    words:
      'fold the darts and draw over them from the center, level there, to the side point, square to ' +
      'the side there. The edge climbs all the way and never turns back: at a dart it has the angle ' +
      'at the last dart times its distance from the center over that of the last dart, and of all ' +
      'such edges it is the one that comes out at the side point: try an angle, see how high the edge ' +
      'ends, and change the angle in proportion; the second or third try is within a pencil line. ' +
      'Each stretch from center to dart, ' +
      'dart to dart, dart to side is a parabola (the last one nearly, since truing moves its end): ' +
      'the directions at its ends meet in a point halfway along, and it passes in the middle between ' +
      'that point and the middle of its chord.',
  },
  {
    line: 'side',
    words:
      'from the waist to the hip line a parabola that is straight down at the hip line: at half its ' +
      'depth it is a quarter of its take-up inside the width of the hip. From there straight down, ' +
      'by taper_start if the side tapers or flares.',
  },
  {
    line: 'taper',
    words:
      'half of taper_blend below where it begins, at the width of the hip, mark a point and rule a ' +
      'line from it to the side end of the hem. The curve ends on that line at the depth taper_blend; ' +
      'at half this depth it has gone a quarter as far in or out as at its end. With taper_blend = 0 ' +
      'the line begins at once, with a corner.',
  },
  {
    line: 'hem',
    words:
      'level at the center, square to the side, and a flat curve between, whose handles lie a third ' +
      'of its width from each end. Its side end lies as much lower or higher as these two directions ' +
      'ask for.',
  },
  {
    line: 'flare',
    words:
      'with dart_closing all that lies between the dart nearest the side and the hem is turned about ' +
      'its tip until that share of the dart is closed.',
  },
  {
    line: 'truing',
    words:
      'at last the side point of each panel is moved in until the sewn waist has its length, and that ' +
      'of the back up until both side seams are equally long: measure both along the curve, move the ' +
      'point by the difference, measure again.',
  },
];
