/**
 * The layers of a piece in a pattern exchange file after ASTM D6673. The standard says that features
 * stand on layers of their own; these numbers are known from a second hand only and are unverified.
 */
export const D6673_LAYERS = {
  boundary: '1',
  turnPoint: '2',
  curvePoint: '3',
  notch: '4',
  gradeReference: '5',
  mirrorLine: '6',
  grainLine: '7',
  internalLine: '8',
  internalCutOut: '11',
  drillHole: '13',
  sewLine: '14',
  annotation: '15',
} as const;
