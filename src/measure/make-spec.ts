/** Specs from points of measure on any pattern, and from the finished measurements of a skirt. */
import type { GradedPattern } from '../grade/graded-pattern';
import type { PointOfMeasure } from './point-of-measure';
import { takeMeasure } from './point-of-measure';
import type { MeasureGroup, Spec, Taken } from './spec';
import { growthsOf } from './spec';
import type { ToleranceSettings } from './tolerances';
import { USUAL_SOURCE, USUAL_TOLERANCES, usualTolerance } from './tolerances';

/** Takes every point of measure in every size. */
export function patternSpec(
  { sizes, rules }: Pick<GradedPattern, 'sizes' | 'rules'>,
  points: readonly PointOfMeasure[],
  settings: ToleranceSettings = USUAL_TOLERANCES,
): Spec {
  return {
    sizes: sizes.map(({ label }) => label),
    base: rules.base,
    rows: points.map((pom) => {
      const { code, measure, how, taken, group, tolerance } = pom;
      const values = sizes.map(({ pieces }) => takeMeasure(pom, pieces));
      return {
        code,
        measure,
        how,
        taken,
        values,
        tolerance: tolerance ?? usualTolerance(group, taken, leastStep(values, taken), settings),
        source: tolerance === undefined ? USUAL_SOURCE : 'as stated with the points of measure',
      };
    }),
  };
}

/** The smallest step that is no standing still, all round; zero if nothing grows. */
function leastStep(values: readonly number[], taken: Taken): number {
  const steps = growthsOf({ values })
    .map(Math.abs)
    .filter((step) => step > 1e-6);
  return steps.length === 0 ? 0 : Math.min(...steps) * (taken === 'flat' ? 2 : 1);
}

interface SkirtPoint {
  /** Name among the finished measurements. */
  readonly measure: string;
  readonly code: string;
  readonly how: string;
  readonly taken: Taken;
  readonly group: MeasureGroup;
}

/** The points of measure of a skirt, in the order of a spec. */
const SKIRT_POINTS: readonly SkirtPoint[] = [
  pom('A', 'waist', 'along the waist seam, darts and zip closed, all round', 'girth', 'girth'),
  pom('B', 'hip', 'straight across at the hip line, all round', 'girth', 'girth'),
  pom('C', 'hem', 'along the bottom edge, all round', 'girth', 'hem'),
  pom('D', 'center_front_length', 'waist seam to hem at center front', 'length', 'length'),
  pom('E', 'center_back_length', 'waist seam to hem at center back', 'length', 'length'),
  pom('F', 'side_seam_front', 'waist seam to hem along the side seam', 'length', 'length'),
  pom('G', 'waistband', 'band closed, without its underlap', 'girth', 'girth'),
  pom('H', 'zip_length', 'zip, end to end', 'length', 'opening'),
];

function pom(
  code: string,
  measure: string,
  how: string,
  taken: Taken,
  group: MeasureGroup,
): SkirtPoint {
  return { code, measure, how, taken, group };
}

/** The spec of a drafted skirt; its style may set the tolerances. */
export function skirtSpec({ sizes, rules }: Pick<GradedPattern, 'sizes' | 'rules'>): Spec {
  const parameters = sizes[rules.base]?.parameters ?? new Map<string, number>();
  const setting = (group: MeasureGroup): number =>
    parameters.get(`${group}_tolerance`) ?? USUAL_TOLERANCES[group];
  const settings: ToleranceSettings = {
    girth: setting('girth'),
    hem: setting('hem'),
    length: setting('length'),
    band: setting('band'),
    opening: setting('opening'),
  };
  const rows = SKIRT_POINTS.flatMap(({ code, measure, how, taken, group }) => {
    const found = sizes.flatMap(({ measures }) => measures.filter(({ name }) => name === measure));
    if (found.length < sizes.length) return [];
    const values = found.map(({ value }) => value);
    const tolerance = usualTolerance(group, taken, leastStep(values, taken), settings);
    return [{ code, measure, how, taken, values, tolerance, source: USUAL_SOURCE }];
  });
  return { sizes: sizes.map(({ label }) => label), base: rules.base, rows };
}
