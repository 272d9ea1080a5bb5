/** Pattern and rule files as a sample room types them. */
import type { GradeResult } from '../../src/jobs/grade-result';
import type { PatternRequest } from '../../src/jobs/requests';
import { gradePattern } from '../../src/jobs/grade-pattern';
import type { Point } from '../../src/geometry/point';
import { pieceNamed, pointOf } from '../../src/pattern/piece';

/** A quarter of a skirt front with round numbers in inches; its base is 12. */
export const FRONT = `# unit: in
# base: 12
piece,point,x,y,kind,edge,seam
front,center_waist,0,0,corner,waist,
front,dart_in,3,0,,,
front,dart_tip,3.5,4,dart,,
front,dart_out,4,0,,,
front,side_waist,7.5,0,corner,side,side_seam
front,side_hip,9,8,corner,,
front,side_hem,9,25,corner,hem,
front,center_hem,0,25,corner,center_front,
`;

/** The same with a back whose side seam is that of the front. */
export const FRONT_AND_BACK = `${FRONT}${FRONT.split('\n')
  .filter((line) => line.startsWith('front'))
  .map((line) => line.replace('front', 'back').replace('center_front', 'center_back'))
  .join('\n')}\n`;

/**
 * A rule sheet of steps for that front: a quarter of an even inch of girth to the quarter and to its
 * length, the dart by half of it.
 */
export function evenRules(sizes: string, y: 'down' | 'up' = 'down'): string {
  const down = y === 'down' ? '1/4' : '-1/4';
  return `# y: ${y}
# sizes: ${sizes}
piece,point,step_dx,step_dy
front,center_waist,0,0
front,dart_in,1/8,0
front,dart_tip,1/8,0
front,dart_out,1/8,0
front,side_waist,1/4,0
front,side_hip,1/4,0
front,side_hem,1/4,${down}
front,center_hem,0,${down}
`;
}

export function graded(
  pattern: string,
  rules: string,
  more: Omit<Partial<PatternRequest>, 'pattern' | 'rules'> = {},
): GradeResult {
  return gradePattern({
    pattern: { text: pattern, file: 'base.csv' },
    rules: { text: rules, file: 'rules.csv' },
    ...more,
  });
}

/** How far a point has moved from the base in a size, in mm. */
export function move(result: GradeResult, size: string, piece: string, point: string): Point {
  const at = (label: string): Point => {
    const found = result.range.sizes.find((sized) => sized.label === label);
    return pointOf(pieceNamed(found?.pieces ?? [], piece), point);
  };
  const [there, here] = [at(size), at(result.range.base)];
  return { x: there.x - here.x, y: there.y - here.y };
}
