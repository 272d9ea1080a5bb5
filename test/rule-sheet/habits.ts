/** One published grade of a front, written in every habit that rule sheets are written in. */

/** The published grade in the habits of the trade, each with the zero at the center of the waist. */
export const HABITS: Readonly<Record<string, string>> = {
  'a step that holds in every size': `# unit: in
# sizes: 10, 12, 14, 16
# base: 12
piece,point,step_dx,step_dy
front,center_waist,0,0
front,dart_inner,1/8,0
front,dart_tip,1/8,0
front,dart_outer,1/8,0
front,side_waist,1/4,0
front,side_hip,1/4,0
front,side_hem,+1/4,+1/4
front,center_hem,0,1/4
`,
  'named rules': `Rules of the front
# sizes: 10, 12, 14, 16
# base: 12
rule,point,size,step_dx_in,step_dy_in,note
still,,,0,0,of nothing that grows
dart,,,1/8,0
side,,,1/4,0
still,front.center_waist
dart,front.dart_inner
dart,front.dart_tip
dart,front.dart_outer
side,front.side_waist
side,front.side_hip
,front.side_hem,,1/4,1/4
,front.center_hem,,0,1/4
`,
  'moves by named rules, y up': `# unit: in
# y: up
# base: 12
rule,piece,point,size,dx,dy
side,,,10,-1/4,0
side,,,14,1/4,0
side,,,16,2/4,0
dart,,,10,-1/8,0
dart,,,14,1/8,0
dart,,,16,1/4,0
,front,center_waist,,0,0
dart,front,dart_inner
dart,front,dart_tip
dart,front,dart_outer
side,front,side_waist
side,front,side_hip
,front,side_hem,10,-1/4,1/4
,front,side_hem,14,1/4,-1/4
,front,side_hem,16,1/2,-1/2
,front,center_hem,10,0,1/4
,front,center_hem,14,0,-1/4
,front,center_hem,16,0,-1/2
`,
  'one size a column': `# unit: in
point,axis,10,12,14,16
front.center_waist,dx,0,0,0,0
front.center_waist,dy,0,0,0,0
front.dart_inner,dx,-1/8,0,1/8,2/8
front.dart_inner,dy,0,0,0,0
front.dart_tip,dx,-1/8,0,1/8,2/8
front.dart_tip,dy,0,0,0,0
front.dart_outer,dx,-1/8,0,1/8,2/8
front.dart_outer,dy,0,0,0,0
front.side_waist,dx,-2/8,0,2/8,4/8
front.side_waist,dy,0,0,0,0
front.side_hip,dx,-2/8,0,2/8,4/8
front.side_hip,dy,0,0,0,0
front.side_hem,dx,-2/8,0,2/8,4/8
front.side_hem,dy,-2/8,0,2/8,4/8
front.center_hem,dx,0,0,0,0
front.center_hem,dy,-2/8,0,2/8,4/8
`,
  'axes by letters, tabs and a title line': `Front, graded from 12
Unit	inches
point	axis	10	12	14	16
front.center_waist	x	0	0	0	0
front.center_waist	Y	0	0	0	0
front.dart_inner	x	-1/8	0	1/8	2/8
front.dart_inner	Y	0	0	0	0
front.dart_tip	x	-1/8	0	1/8	2/8
front.dart_tip	Y	0	0	0	0
front.dart_outer	x	-1/8	0	1/8	2/8
front.dart_outer	Y	0	0	0	0
front.side_waist	x	-2/8	0	2/8	4/8
front.side_waist	Y	0	0	0	0
front.side_hip	x	-2/8	0	2/8	4/8
front.side_hip	Y	0	0	0	0
front.side_hem	x	-2/8	0	2/8	4/8
front.side_hem	Y	-2/8	0	2/8	4/8
front.center_hem	x	0	0	0	0
front.center_hem	Y	-2/8	0	2/8	4/8
`,
  'semicolons, decimal commas and columns in any order': `Sheet of the front;;;;;;
16;axis (cm);12;piece;14;point;10
0;dx;0;front;0;center_waist;0
0;dy;0;front;0;center_waist;0
0,635;dx;0;front;0,3175;dart_inner;-0,3175
0;dy;0;front;0;dart_inner;0
0,635;dx;0;front;0,3175;dart_tip;-0,3175
0;dy;0;front;0;dart_tip;0
0,635;dx;0;front;0,3175;dart_outer;-0,3175
0;dy;0;front;0;dart_outer;0
1,27;dx;0;front;0,635;side_waist;-0,635
0;dy;0;front;0;side_waist;0
1,27;dx;0;front;0,635;side_hip;-0,635
0;dy;0;front;0;side_hip;0
1,27;dx;0;front;0,635;side_hem;-0,635
1,27;dy;0;front;0,635;side_hem;-0,635
0;dx;0;front;0;center_hem;0
1,27;dy;0;front;0,635;center_hem;-0,635
`,
  'names in capitals, with blanks and hyphens': `# unit: in
# base: 12
point,axis,10,12,14,16
front.CENTER_WAIST,dx,0,0,0,0
front.CENTER_WAIST,dy,0,0,0,0
front.DART_INNER,dx,-1/8,0,1/8,2/8
front.DART_INNER,dy,0,0,0,0
front.DART_TIP,dx,-1/8,0,1/8,2/8
front.DART_TIP,dy,0,0,0,0
front.DART_OUTER,dx,-1/8,0,1/8,2/8
front.DART_OUTER,dy,0,0,0,0
FRONT.side waist,dx,-2/8,0,2/8,4/8
FRONT.side waist,dy,0,0,0,0
Front.Side-Hip,dx,-2/8,0,2/8,4/8
Front.Side-Hip,dy,0,0,0,0
front.SIDEHEM,dx,-2/8,0,2/8,4/8
front.SIDEHEM,dy,-2/8,0,2/8,4/8
front.CENTER_HEM,dx,0,0,0,0
front.CENTER_HEM,dy,-2/8,0,2/8,4/8
`,
  'blanks and dashes for zero': `# unit: in
# blank: 0
point,axis,10,12,14,16
front.center_waist,dx,-,-,,-
front.center_waist,dy,-,-,,-
front.dart_inner,dx,-1/8,-,1/8,2/8
front.dart_inner,dy,-,-,,-
front.dart_tip,dx,-1/8,-,1/8,2/8
front.dart_tip,dy,-,-,,-
front.dart_outer,dx,-1/8,-,1/8,2/8
front.dart_outer,dy,-,-,,-
front.side_waist,dx,-2/8,-,2/8,4/8
front.side_waist,dy,-,-,,-
front.side_hip,dx,-2/8,-,2/8,4/8
front.side_hip,dy,-,-,,-
front.side_hem,dx,-2/8,-,2/8,4/8
front.side_hem,dy,-2/8,-,2/8,4/8
front.center_hem,dx,-,-,,-
front.center_hem,dy,-2/8,-,2/8,4/8
`,
  'blanks and dashes for zero, one size a row': `# blank: 0
# base: 12
size,point,piece,dx_in,dy_in
16,center_waist,front,,
14,center_waist,front,,
10,center_waist,front,–,–
16,dart_inner,front,2/8,
14,dart_inner,front,1/8,
10,dart_inner,front,-1/8,–
16,dart_tip,front,2/8,
14,dart_tip,front,1/8,
10,dart_tip,front,-1/8,–
16,dart_outer,front,2/8,
14,dart_outer,front,1/8,
10,dart_outer,front,-1/8,–
16,side_waist,front,4/8,
14,side_waist,front,2/8,
10,side_waist,front,-2/8,–
16,side_hip,front,4/8,
14,side_hip,front,2/8,
10,side_hip,front,-2/8,–
16,side_hem,front,4/8,4/8
14,side_hem,front,2/8,2/8
10,side_hem,front,-2/8,-2/8
16,center_hem,front,,4/8
14,center_hem,front,,2/8
10,center_hem,front,–,-2/8
`,
  'columns headed by steps': `# unit: in
# base: 12
point,axis,10-12,12-14,14-16
front.center_waist,dx,0,0,0
front.center_waist,dy,0,0,0
front.dart_inner,dx,1/8,1/8,1/8
front.dart_inner,dy,0,0,0
front.dart_tip,dx,1/8,1/8,1/8
front.dart_tip,dy,0,0,0
front.dart_outer,dx,1/8,1/8,1/8
front.dart_outer,dy,0,0,0
front.side_waist,dx,2/8,2/8,2/8
front.side_waist,dy,0,0,0
front.side_hip,dx,2/8,2/8,2/8
front.side_hip,dy,0,0,0
front.side_hem,dx,2/8,2/8,2/8
front.side_hem,dy,2/8,2/8,2/8
front.center_hem,dx,0,0,0
front.center_hem,dy,2/8,2/8,2/8
`,
  'steps from the base outward': `# unit: in
# base: 12
point,axis,12 to 10,12 > 14,14 – 16
front.center_waist,step_dx,0,0,0
front.center_waist,step_dy,0,0,0
front.dart_inner,step_dx,-1/8,1/8,1/8
front.dart_inner,step_dy,0,0,0
front.dart_tip,step_dx,-1/8,1/8,1/8
front.dart_tip,step_dy,0,0,0
front.dart_outer,step_dx,-1/8,1/8,1/8
front.dart_outer,step_dy,0,0,0
front.side_waist,step_dx,-2/8,2/8,2/8
front.side_waist,step_dy,0,0,0
front.side_hip,step_dx,-2/8,2/8,2/8
front.side_hip,step_dy,0,0,0
front.side_hem,step_dx,-2/8,2/8,2/8
front.side_hem,step_dy,-2/8,2/8,2/8
front.center_hem,step_dx,0,0,0
front.center_hem,step_dy,-2/8,2/8,2/8
`,
  'steps among stated sizes': `# unit: in
# base: 12
# sizes: 10, 12, 14, 16
point,axis,14–16,12–14,10–12
front.center_waist,x,0,0,0
front.center_waist,y,0,0,0
front.dart_inner,x,1/8,1/8,1/8
front.dart_inner,y,0,0,0
front.dart_tip,x,1/8,1/8,1/8
front.dart_tip,y,0,0,0
front.dart_outer,x,1/8,1/8,1/8
front.dart_outer,y,0,0,0
front.side_waist,x,2/8,2/8,2/8
front.side_waist,y,0,0,0
front.side_hip,x,2/8,2/8,2/8
front.side_hip,y,0,0,0
front.side_hem,x,2/8,2/8,2/8
front.side_hem,y,2/8,2/8,2/8
front.center_hem,x,0,0,0
front.center_hem,y,2/8,2/8,2/8
`,
  'moves and steps and words, as they are written here': `piece,point,size,dx_in,dy_in,step_dx_in,step_dy_in,rule_x,rule_y
front,center_waist,10,0,0,0,0,as drawn,as drawn
front,center_waist,12,0,0,0,0,as drawn,as drawn
front,center_waist,14,0,0,0,0,as drawn,as drawn
front,center_waist,16,0,0,0,0,as drawn,as drawn
front,dart_inner,10,-0.125,0,-0.125,0,as drawn,as drawn
front,dart_inner,12,0,0,0,0,as drawn,as drawn
front,dart_inner,14,0.125,0,0.125,0,as drawn,as drawn
front,dart_inner,16,0.25,0,0.125,0,as drawn,as drawn
front,dart_tip,10,-0.125,0,-0.125,0,as drawn,as drawn
front,dart_tip,12,0,0,0,0,as drawn,as drawn
front,dart_tip,14,0.125,0,0.125,0,as drawn,as drawn
front,dart_tip,16,0.25,0,0.125,0,as drawn,as drawn
front,dart_outer,10,-0.125,0,-0.125,0,as drawn,as drawn
front,dart_outer,12,0,0,0,0,as drawn,as drawn
front,dart_outer,14,0.125,0,0.125,0,as drawn,as drawn
front,dart_outer,16,0.25,0,0.125,0,as drawn,as drawn
front,side_waist,10,-0.25,0,-0.25,0,as drawn,as drawn
front,side_waist,12,0,0,0,0,as drawn,as drawn
front,side_waist,14,0.25,0,0.25,0,as drawn,as drawn
front,side_waist,16,0.5,0,0.25,0,as drawn,as drawn
front,side_hip,10,-0.25,0,-0.25,0,as drawn,as drawn
front,side_hip,12,0,0,0,0,as drawn,as drawn
front,side_hip,14,0.25,0,0.25,0,as drawn,as drawn
front,side_hip,16,0.5,0,0.25,0,as drawn,as drawn
front,side_hem,10,-0.25,-0.25,-0.25,-0.25,as drawn,as drawn
front,side_hem,12,0,0,0,0,as drawn,as drawn
front,side_hem,14,0.25,0.25,0.25,0.25,as drawn,as drawn
front,side_hem,16,0.5,0.5,0.25,0.25,as drawn,as drawn
front,center_hem,10,0,-0.25,0,-0.25,as drawn,as drawn
front,center_hem,12,0,0,0,0,as drawn,as drawn
front,center_hem,14,0,0.25,0,0.25,as drawn,as drawn
front,center_hem,16,0,0.5,0,0.25,as drawn,as drawn
`,
  'a blank corner, names that stand once, marked sizes and axes in words': `# unit: in
# base: 12
# blank: 0
,piece,axis,10,(12),14 in,16*
center_waist,front,across,,,,
,,Down,,,,
dart_inner,,h,-1/8,0,1/8,2/8
,,v,,,,
dart_tip,,Across,-1/8,0,1/8,2/8
,,down,,,,
dart_outer,,horizontal,-1/8,0,1/8,2/8
,,vertical,,,,
side_waist,,across,-2/8,0,2/8,4/8
,,down,,,,
side_hip,,across,-2/8,0,2/8,4/8
,,v,,,,
side_hem,,across,-2/8,0,2/8,4/8
,,down,-2/8,0,2/8,4/8
center_hem,,across,,,,
,,vertical,-2/8,0,2/8,4/8
`,
  'named rules, one size a column': `# unit: in
# base: 12
rule,point,axis,10,12,14,16
side,,dx,-1/4,0,1/4,2/4
side,,dy,0,0,0,0
dart,,dx,-1/8,0,1/8,1/4
dart,,dy,0,0,0,0
,front.center_waist,dx,0,0,0,0
,front.center_waist,dy,0,0,0,0
dart,front.dart_inner
dart,front.dart_tip
Dart,front.dart_outer
side,front.side_waist
side,front.side_hip
,front.side_hem,dx,-1/4,0,1/4,1/2
,front.side_hem,dy,-1/4,0,1/4,1/2
,front.center_hem,dx,0,0,0,0
,front.center_hem,dy,-1/4,0,1/4,1/2
`,
};
