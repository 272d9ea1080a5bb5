/** A plain bodice quarter, front and back, and a sleeve cap: invented points in centimeters. */
export const BODICE = `# title: Plain bodice
# unit: cm
# base: M
piece,point,x,y,kind,edge,seam,fold,cut
front,neck_center,0,8,corner,neck,,,1 on fold
front,neck_low,3.4,6.6,curve,,,,
front,neck_side,6.8,0,corner,shoulder,shoulder,,
front,shoulder_tip,18.8,4.4,corner,armhole,,,
front,armhole_mid,16.6,12,curve,,,,
front,armhole_notch,17.4,17,notch,,,,
front,underarm,23,21.5,corner,side,side,,
front,side_notch,22,31.5,notch,,,,
front,waist_side,21,41.5,corner,waist,,,
front,waist_center,0,42.5,corner,center_front,,fold,
back,neck_center,0,2.2,corner,neck,,,1 on fold
back,neck_low,4.2,1.6,curve,,,,
back,neck_side,7.2,0,corner,shoulder,shoulder,,
back,shoulder_tip,19.2,4.4,corner,armhole,,,
back,armhole_mid,17.6,12,curve,,,,
back,underarm,22.4,21.5,corner,side,side,,
back,side_notch,21.4,31.5,notch,,,,
back,waist_side,20.4,41.5,corner,waist,,,
back,waist_center,0,42.5,corner,center_back,,fold,
`;

/** Steps in centimeters that keep both seams matched in every size. */
export const STEPS = `# sizes: XS, S, M, L, XL
# unit: cm
rule,piece,point,step_dx,step_dy
,front,neck_center,0,0.2
,front,neck_side,0.2,0
,front,shoulder_tip,0.5,0.1
,front,underarm,1,0.4
,front,waist_side,1,0.6
,front,waist_center,0,0.6
,back,neck_center,0,0
,back,neck_side,0.2,0
,back,shoulder_tip,0.5,0.1
,back,underarm,1,0.4
,back,waist_side,1,0.6
,back,waist_center,0,0.6
`;
