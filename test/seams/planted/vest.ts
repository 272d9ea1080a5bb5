/** A vest in three pieces a half, cut on the fold, with side panels: invented places and growth. */
import type { Garment, Shares } from './garment';

const still: Shares = {};
const sided = (side: 'front' | 'back', drop: number): Garment['rules'] => ({
  [`${side}.neck_center`]: [still, { length: drop }],
  [`${side}.neck_shoulder`]: [{ neck: 0.2 }, still],
  [`${side}.shoulder_tip`]: [{ bust: 0.12 }, { length: 0.1 }],
  [`${side}.arm_mid`]: [{ bust: 0.15 }, { length: 0.3 }],
  [`${side}.arm_top`]: [{ bust: 0.175 }, { length: 0.5 }],
  [`${side}.waist_side`]: [{ bust: 0.175 }, { length: 0.9 }],
  [`${side}.hip_side`]: [{ bust: 0.175 }, { length: 1.3 }],
  [`${side}.hip_center`]: [still, { length: 1.3 }],
  [`panel.${side}_top`]: [side === 'front' ? still : { bust: 0.15 }, { length: 0.5 }],
  [`panel.${side}_waist`]: [side === 'front' ? still : { bust: 0.15 }, { length: 0.9 }],
  [`panel.${side}_hip`]: [side === 'front' ? still : { bust: 0.15 }, { length: 1.3 }],
});

/** Both edges of a princess seam run down in the file, and points of it have other names on the panel. */
export const VEST: Garment = {
  name: 'vest',
  sizes: ['34', '36', '38', '40', '42', '44', '46', '48'],
  base: '40',
  pattern: `# unit: cm
# base: 40
piece,point,x,y,kind,edge,seam,fold
front,neck_center,0,8,corner,neck,
front,neck_shoulder,7,0,corner,shoulder,shoulder_seam
front,shoulder_tip,19,4.2,corner,armhole,
front,arm_mid,17.4,14,curve,,
front,arm_top,20,22,corner,princess,princess_f
front,waist_side,18,41,corner,princess_low,princess_low_f
front,hip_side,20,60,corner,hem,
front,hip_center,0,60,corner,center,,fold
back,neck_center,0,2.5,corner,neck,
back,neck_shoulder,7.4,0,corner,shoulder,shoulder_seam
back,shoulder_tip,19.4,4.2,corner,armhole,
back,arm_mid,18,14,curve,,
back,arm_top,20.5,22,corner,princess,princess_b
back,waist_side,18,41,corner,princess_low,princess_low_b
back,hip_side,20.5,60,corner,hem,
back,hip_center,0,60,corner,center,,fold
panel,front_top,0,22,corner,front_up,princess_f
panel,front_waist,2,41,corner,front_low,princess_low_f
panel,front_hip,0,60,corner,hem,
panel,back_hip,11,60,corner,back_low,princess_low_b
panel,back_waist,8.5,41,corner,back_up,princess_b
panel,back_top,11,22,corner,under,
`,
  seams: '',
  rules: { ...sided('front', 0.1), ...sided('back', 0) },
  grows: {
    bust: [40, 40, 40, 40, 52, 52, 52],
    length: [10, 10, 10, 10, 11, 11, 11],
    neck: [10, 10, 10, 10, 12.5, 12.5, 12.5],
  },
};
