/**
 * Slips planted in the engine, one at a time. At least one of the named test files must fail for
 * each; golden files are not among them, for they say that something changed, not that it is wrong.
 */

export interface Mutant {
  readonly name: string;
  /** Path below src. */
  readonly file: string;
  /** Text that stands in the file once, and what is planted in its place. */
  readonly find: string;
  readonly replace: string;
  /** Paths below test. */
  readonly tests: readonly string[];
}

/** The name of a run with nothing planted. */
export const NO_MUTANT = 'none';

export const MUTANTS: readonly Mutant[] = [
  {
    name: 'the closed waist never waves',
    file: 'geometry/bends.ts',
    find: 'most = Math.max(most, Math.abs(cross(taut',
    replace: 'most = Math.min(most, Math.abs(cross(taut',
    tests: ['check/closed-waist.test.ts'],
  },
  {
    name: 'the waist beyond a dart does not fall by the angle of the dart',
    file: 'draft/shaped-skirt/waist.ts',
    find: "numberValue('@out_angle', '@course - @opened')",
    replace: "numberValue('@out_angle', '@course - @opened_before')",
    tests: ['check/closed-waist.test.ts'],
  },
  {
    name: 'the curve into the taper arrives in another direction than the taper',
    file: 'draft/shaped-skirt/side.ts',
    find: 'x: `${hip} - ${inward}/6`',
    replace: 'x: `${hip} - ${inward}/3`',
    tests: ['check/side-direction.test.ts'],
  },
  {
    name: 'no size is ever said to want another number of darts',
    file: 'check/dart-number.ts',
    find: '  return panels.flatMap(',
    replace: '  return [].flatMap(',
    tests: ['check/dart-number.test.ts'],
  },
  {
    name: 'no corner is looked at across a seam',
    file: 'check/corners-across-seam.ts',
    find: 'if (Number.isNaN(inBase)) return [];',
    replace: 'return [];',
    tests: ['check/corners-across-seam.test.ts'],
  },
  {
    name: 'legs of a dart that the base has apart are no matter',
    file: 'check/dart-legs.ts',
    find: 'const isKept = !isBase &&',
    replace: 'const isKept =',
    tests: ['check/dart-legs.test.ts'],
  },
  {
    name: 'the axis of a dart is held against itself',
    file: 'check/dart-truing.ts',
    find: 'angleBetween(axisOf(piece, dart), axisOf(base, dart))',
    replace: 'angleBetween(axisOf(base, dart), axisOf(base, dart))',
    tests: ['check/dart-truing.test.ts'],
  },
  {
    name: 'the ruler of 100 mm is 99 mm long',
    file: 'print/ruler.ts',
    find: 'tick(10 * i, -TICK)',
    replace: 'tick(9.9 * i, -TICK)',
    tests: ['print/ruler.test.ts'],
  },
  {
    name: 'the strip to glue on is 9 mm wide',
    file: 'print/tile-format.ts',
    find: 'const GLUE = 10;',
    replace: 'const GLUE = 9;',
    tests: ['print/ruler.test.ts'],
  },
  {
    name: '7 cm of closed seam are enough between zip and vent',
    file: 'check/vent.ts',
    find: 'const CLEAR_OF_ZIP = 80;',
    replace: 'const CLEAR_OF_ZIP = 70;',
    tests: ['check/vent-and-zip.test.ts'],
  },
  {
    name: 'a zip ends above the hip line where it ends below',
    file: 'check/zip.ts',
    find: "'below' : 'above'",
    replace: "'above' : 'below'",
    tests: ['check/vent-and-zip.test.ts'],
  },
  {
    name: 'a vent begins below the zip where it begins above its end',
    file: 'check/vent.ts',
    find: "'above' : 'below'",
    replace: "'below' : 'above'",
    tests: ['check/vent-and-zip.test.ts'],
  },
  {
    name: 'miters are cut off at two and a half widths',
    file: 'pattern/corner-join.ts',
    find: 'const MITER_LIMIT = 4;',
    replace: 'const MITER_LIMIT = 2.5;',
    tests: ['pattern/corners.test.ts'],
  },
  {
    name: 'the turn-up of a flared side is mirrored no farther than it is deep',
    file: 'pattern/corner-join.ts',
    find: 'MITER_LIMIT * Math.max(a.width, hem.width)',
    replace: '1.2 * Math.max(a.width, hem.width)',
    tests: ['pattern/corners.test.ts'],
  },
  {
    name: 'inches are fractions ten times as loosely',
    file: 'units.ts',
    find: 'NEAR_FRACTION = 0.5',
    replace: 'NEAR_FRACTION = 5',
    tests: ['units.test.ts'],
  },
  {
    name: 'the closed waist may turn back ten times as much',
    file: 'tolerance.ts',
    find: 'WAIST_TURNS_BACK = 2.5;',
    replace: 'WAIST_TURNS_BACK = 25;',
    tests: ['check/closed-waist.test.ts'],
  },
  {
    name: 'the closed waist may wave ten times as much',
    file: 'tolerance.ts',
    find: 'WAIST_WAVE = 0.3;',
    replace: 'WAIST_WAVE = 3;',
    tests: ['check/closed-waist.test.ts'],
  },
  {
    name: 'an edge over a dart may turn ten times as much',
    file: 'tolerance.ts',
    find: 'EDGE_TURN = 2 * SQUARE;',
    replace: 'EDGE_TURN = 20 * SQUARE;',
    tests: ['check/dart-truing.test.ts'],
  },
  {
    name: 'the axis of a dart may lean ten times as much',
    file: 'tolerance.ts',
    find: 'AXIS_TURN = 0.5;',
    replace: 'AXIS_TURN = 5;',
    tests: ['check/dart-truing.test.ts'],
  },
  {
    name: 'a cut line may be ten times as much too near',
    file: 'tolerance.ts',
    find: 'ALLOWANCE_KEPT = 0.05;',
    replace: 'ALLOWANCE_KEPT = 0.5;',
    tests: ['check/cut-lines.test.ts'],
  },
  {
    name: 'points on one line are rounded one by one',
    file: 'seams/levels.ts',
    find: 'placeOf(c) - placeOf(last) <= SAME_PLACE',
    replace: 'placeOf(c) - placeOf(last) < 0',
    tests: ['seams/levels.test.ts'],
  },
];
