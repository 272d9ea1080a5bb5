/** A bodice with sleeve, a trouser, six gores and a yoke skirt: invented places and growth. */
import type { Garment, Shares } from './garment';

type Rules = Garment['rules'];
const still: Shares = {};

const bodiceRules: Rules = {
  'front.neck_center': [still, { length: 0.1 }],
  'front.neck_side': [{ neck: 0.2 }, still],
  'front.shoulder_tip': [{ bust: 0.11 }, { length: 0.1 }],
  'front.underarm': [{ bust: 0.25 }, { length: 0.4 }],
  'front.waist_side': [{ bust: 0.25 }, { length: 0.9 }],
  'front.waist_center': [still, { length: 0.9 }],
  'back.neck_center': [still, { length: 0.04 }],
  'back.neck_side': [{ neck: 0.2 }, still],
  'back.shoulder_tip': [{ bust: 0.11 }, { length: 0.1 }],
  'back.underarm': [{ bust: 0.25 }, { length: 0.4 }],
  'back.waist_side': [{ bust: 0.25 }, { length: 0.9 }],
  'back.waist_center': [still, { length: 0.9 }],
  'sleeve.cap_front': [{ bust: 0.17 }, { length: 0.1 }],
  'sleeve.crown': [still, { length: -0.3 }],
  'sleeve.cap_back': [{ bust: -0.17 }, { length: 0.1 }],
  'sleeve.wrist_back': [{ bust: -0.08 }, { length: 0.7 }],
  'sleeve.wrist_front': [{ bust: 0.08 }, { length: 0.7 }],
};

/** Front and back quarter and a whole sleeve, whose cap is eased into both armholes. */
export const BODICE: Garment = {
  name: 'bodice with sleeve',
  sizes: ['XS', 'S', 'M', 'L', 'XL', 'XXL'],
  base: 'M',
  pattern: `# unit: cm
# base: M
piece,point,x,y,kind,edge,seam
front,neck_center,0,8,corner,neck,
front,neck_low,3.4,6.6,curve,,
front,neck_side,6.8,0,corner,shoulder,shoulder
front,shoulder_tip,18.8,4.4,corner,armhole,
front,armhole_mid,16.6,12,curve,,
front,underarm,23,21.5,corner,side,side
front,side_notch,22,31.5,notch,,
front,waist_side,21,41.5,corner,waist,
front,waist_center,0,42.5,corner,center_front,
back,neck_center,0,2.2,corner,neck,
back,neck_low,4.2,1.6,curve,,
back,neck_side,7.2,0,corner,shoulder,shoulder
back,shoulder_tip,19.2,4.4,corner,armhole,
back,armhole_mid,17.6,12,curve,,
back,underarm,22.4,21.5,corner,side,side
back,side_notch,21.4,31.5,notch,,
back,waist_side,20.4,41.5,corner,waist,
back,waist_center,0,42.5,corner,center_back,
sleeve,cap_front,14.5,13,corner,under_front,under
sleeve,wrist_front,12,58,corner,wrist,
sleeve,wrist_back,-12,58,corner,under_back,under
sleeve,cap_back,-14.5,13,corner,cap,
sleeve,back_bend,-9,5,curve,,
sleeve,crown,0,0,curve,,
sleeve,front_bend,9,5.5,curve,,
`,
  seams: 'edge,sewn_to,ease\nsleeve.cap,back.armhole + front.armhole,2.15\n',
  rules: bodiceRules,
  grows: {
    bust: [40, 40, 40, 50, 60],
    length: [10, 10, 10, 10, 10],
    neck: [12, 12, 12, 12, 12],
  },
  solved: [{ point: 'sleeve.crown', seam: 'sleeve.cap to back.armhole + front.armhole' }],
};

const trouserRules: Rules = {
  'front.waist_center': [still, still],
  'front.waist_side': [{ hip: 0.25 }, still],
  'front.hip_side': [{ hip: 0.25 }, { rise: 0.7 }],
  'front.knee_side': [{ hip: 0.12 }, { inseam: 0.5, rise: 1 }],
  'front.hem_side': [{ hip: 0.1 }, { inseam: 1, rise: 1 }],
  'front.hem_in': [{ hip: 0.02 }, { inseam: 1, rise: 1 }],
  'front.knee_in': [{ hip: -0.02 }, { inseam: 0.5, rise: 1 }],
  'front.crotch': [{ hip: -0.05 }, { rise: 1 }],
  'back.waist_center': [still, still],
  'back.waist_side': [{ hip: 0.25 }, still],
  'back.hip_side': [{ hip: 0.25 }, { rise: 0.7 }],
  'back.knee_side': [{ hip: 0.12 }, { inseam: 0.5, rise: 1 }],
  'back.hem_side': [{ hip: 0.1 }, { inseam: 1, rise: 1 }],
  'back.hem_in': [{ hip: 0.02 }, { inseam: 1, rise: 1 }],
  'back.knee_in': [{ hip: -0.02 }, { inseam: 0.5, rise: 1 }],
  'back.crotch': [{ hip: -0.1 }, { rise: 1 }],
  'band.start_low': [still, still],
  'band.end_low': [{ hip: 0.5 }, still],
  'band.end_high': [{ hip: 0.5 }, still],
  'band.start_high': [still, still],
};

/** Front and back leg and half a band; inseams are ruled so that they meet. */
export const TROUSER: Garment = {
  name: 'trouser',
  sizes: ['34', '36', '38', '40', '42', '44', '46'],
  base: '40',
  pattern: `# unit: cm
# base: 40
piece,point,x,y,kind,edge,seam
front,waist_center,0,0,corner,waist,
front,waist_side,19,0,corner,side,side
front,side_curve,21.6,9,curve,,
front,hip_side,22.6,20,notch,,
front,knee_side,20,60,notch,,
front,hem_side,19,102,corner,hem,
front,hem_in,1,102,corner,inseam,inseam
front,knee_in,-2.36,60,notch,,
front,crotch,-5,27,corner,center,
front,seat,-0.6,20,curve,,
back,waist_center,0,0,corner,waist,
back,waist_side,20,0,corner,side,side
back,side_curve,22.6,9,curve,,
back,hip_side,23.6,20,notch,,
back,knee_side,21,60,notch,,
back,hem_side,20,102,corner,hem,
back,hem_in,0,102,corner,inseam,inseam
back,knee_in,-5.6,60.24,notch,,
back,crotch,-10,27.428,corner,center,
back,seat,-0.8,20,curve,,
band,start_low,0,0,corner,low,
band,end_low,39,0,corner,end,
band,end_high,39,-4,corner,high,
band,start_high,0,-4,corner,start,
`,
  seams: 'edge,sewn_to,ease\nband.low,front.waist + back.waist,0\n',
  rules: trouserRules,
  grows: {
    hip: [40, 40, 40, 40, 50, 50],
    rise: [6, 6, 6, 6, 6, 6],
    inseam: [5, 5, 5, 5, 5, 5],
  },
  solved: [{ point: 'back.crotch', seam: 'inseam' }],
};

const GORES = ['center_front', 'side_front', 'side_back', 'center_back', 'left_back', 'left_front'];

/** Six gores of two widths round the body, each with its own rules, and a band. */
export const SIX_GORES: Garment = {
  name: 'six gores',
  sizes: ['8', '10', '12', '14', '16', '18'],
  base: '12',
  pattern: `# unit: cm
# base: 12
piece,point,x,y,kind,edge,seam
${GORES.map((gore, g) => {
  const wide = g % 3 === 0 ? 0.6 : 0;
  const hip = 5.6 + wide + (6.8 * 20) / 70;
  const right = `${gore}_right`;
  const left = `${GORES[(g + 5) % 6] ?? ''}_right`;
  return `${gore},waist_left,${-5.6 - wide},0,corner,waist,
${gore},waist_right,${5.6 + wide},0,corner,right,${right}
${gore},hip_right,${hip},20,notch,,
${gore},hem_right,${12.4 + wide},70,corner,hem,
${gore},hem_left,${-12.4 - wide},70,corner,left,${left}
${gore},hip_left,${-hip},20,notch,,
`;
}).join('')}band,start_low,0,0,corner,low,
band,end_low,69.6,0,corner,end,
band,end_high,69.6,-3,corner,high,
band,start_high,0,-3,corner,start,
`,
  seams: `edge,sewn_to,ease\nband.low,${GORES.map((gore) => `${gore}.waist`).join(' + ')},0\n`,
  rules: Object.fromEntries<readonly [Shares, Shares]>([
    ...GORES.flatMap((gore) =>
      (['left', 'right'] as const).flatMap((side): [string, readonly [Shares, Shares]][] => {
        const out = side === 'left' ? -1 : 1;
        return [
          [`${gore}.waist_${side}`, [{ waist: out / 12 }, still]],
          [`${gore}.hip_${side}`, [{ hip: out / 12 }, { depth: 1 }]],
          [`${gore}.hem_${side}`, [{ hip: out / 12 }, { length: 1 }]],
        ];
      }),
    ),
    ['band.start_low', [still, still]],
    ['band.end_low', [{ waist: 1 }, still]],
    ['band.end_high', [{ waist: 1 }, still]],
    ['band.start_high', [still, still]],
  ]),
  grows: {
    waist: [45, 45, 45, 60, 60],
    hip: [44, 44, 44, 60, 60],
    depth: [4, 4, 4, 4, 4],
    length: [12, 12, 12, 12, 12],
  },
};

const half = (side: 'front' | 'back'): Rules => ({
  [`${side}_yoke.top_center`]: [still, still],
  [`${side}_yoke.top_side`]: [{ waist: 0.25 }, still],
  [`${side}_yoke.low_side`]: [{ hip: 0.25 }, { depth: 0.6 }],
  [`${side}_yoke.low_center`]: [still, { depth: 0.6 }],
  [`${side}_skirt.top_center`]: [still, { depth: 0.6 }],
  [`${side}_skirt.top_side`]: [{ hip: 0.25 }, { depth: 0.6 }],
  [`${side}_skirt.hem_side`]: [{ hip: 0.25 }, { length: 1, depth: 0.6 }],
  [`${side}_skirt.hem_center`]: [still, { length: 1, depth: 0.6 }],
});

/** A yoke whose curved lower edge is sewn to a flared skirt, front and back. */
export const YOKE_SKIRT: Garment = {
  name: 'yoke skirt',
  sizes: ['36', '38', '40', '42', '44'],
  base: '38',
  pattern: `# unit: cm
# base: 38
piece,point,x,y,kind,edge,seam
${(['front', 'back'] as const)
  .map((side) => {
    const wide = side === 'front' ? 0.8 : 0;
    return `${side}_yoke,top_center,0,0,corner,waist,
${side}_yoke,top_side,${17 + wide},-1,corner,side,yoke_side
${side}_yoke,low_side,${21 + wide},11,corner,low,${side}_yoke
${side}_yoke,low_bend,${11 + wide},13.4,curve,,
${side}_yoke,low_center,0,14,corner,center,
${side}_skirt,top_center,0,14,corner,top,${side}_yoke
${side}_skirt,top_bend,${11 + wide},13.4,curve,,
${side}_skirt,top_side,${21 + wide},11,corner,side,skirt_side
${side}_skirt,hem_side,${29 + wide},61,corner,hem,
${side}_skirt,hem_center,0,63,corner,center,
`;
  })
  .join('')}`,
  seams: '',
  rules: { ...half('front'), ...half('back') },
  grows: {
    waist: [40, 40, 40, 40],
    hip: [40, 40, 40, 40],
    depth: [8, 8, 8, 8],
    length: [10, 10, 10, 10],
  },
};

export const GARMENTS: readonly Garment[] = [BODICE, TROUSER, SIX_GORES, YOKE_SKIRT];
