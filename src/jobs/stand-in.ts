/**
 * A body for sheets that come without a chart. The rules of the quarter method do not depend on it;
 * in other styles those that bend are taken here. Invented, near the middle of published tables.
 */
export const STAND_IN_BASE = '1';

/** The body as a chart of two sizes, CSV in inches; its base is `STAND_IN_BASE`. */
export const STAND_IN_CHART = `# unit: in
measurement,1,2
waist_girth,27 1/2,28 1/2
hip_girth,38,39
waist_to_hip,8,8 1/16
waist_to_high_hip,4,4 1/16
waist_to_knee,23,23 1/8
skirt_length,25,25 1/4
stature,65,65 1/4
`;
