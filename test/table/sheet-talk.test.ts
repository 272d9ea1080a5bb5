/** Invented lines: some say how all cells are to be read, others are notes as makers write them. */
import { expect, it } from 'vitest';
import { readPattern } from '../../src/given/read-pattern';
import { inferIncrements, markSheet } from '../../src/index';
import { CANONICAL } from '../chart/charts';
import { readSeams } from '../../src/seams/read-seams';
import { readRules } from '../../src/rule-sheet/read-rules';
import { expectRefusal } from '../expect-refusal';
import { FRONT, graded } from '../given/sheets';

const RULES = '# sizes: 10,12,14,16\npiece,point,step_dx,step_dy\nfront,side_waist,1/4,0\n';
const PATTERN = readPattern(FRONT, 'base.csv');
const ruled = (line: string) =>
  readRules(`# ${line}\n# unit: in\n${RULES}`, 'rules.csv', {
    pieces: PATTERN.pieces.map(({ base: { plan }, ruleNames }) => ({ plan, ruleNames })),
    unit: 'in',
    chart: undefined,
    base: PATTERN.base,
  });

/** The moves of a sheet with one size a column. */
const WIDE = `# unit: in
point,axis,10,12,14
front.side_waist,dx,-1/4,0,1/4
front.side_hip,dx,-1/4,0,1/4
front.side_hip,dy,0,0,0
`;
const CHART = CANONICAL.replace('8,10,12', '10,12,14');
const inferred = (line: string) =>
  inferIncrements({ sheet: `# ${line}\n${WIDE}`, file: 'sheet.csv', style: 'pencil' });
const marked = (line: string) =>
  markSheet({
    ...{ chart: CHART, base: '12', style: 'pencil', pieces: ['front'] },
    ...{ sheet: `# ${line}\n${WIDE}`, sheetFile: 'sheet.csv' },
  });

/** One a line. */
const TALK = `
1 = 1/16
cell = sixteenth
cells in 1/16 in
fitted size 10
nested on 14
growth from 16 down
grading starts at size 16
entries are eighths
one unit = 1/8
digits: sixteenths of an inch
every figure is an eighth
figures doubled
numbers are half the true value
16 = 1
columns in quarter inches
block in 14
master: 10
middle size 14
begins with 10
starts from size 14
size 10 is zero
zero at 14
14 is the base
graded up from 10
moves against size 14
increments counted off 16
each size from the next larger
steps run downward from 16
descending steps
growth reversed
x vertical, y horizontal
x and y exchanged
dx = length, dy = width
y runs toward the waist
signs reversed
outward is minus
cells: mm
figures as centimeters
half scale
shown at one half
everything in tenths
cumulative from the smallest
numbers count from the largest size down
all cells are sixteenths of an inch
8ths
1 stands for 1/8
one = 1/16
a cell of 1 is 1/16
1 equals 1/16
1 means 1/8 in
1 -> 1/16
16 stands for one inch
counted in eighths
written as sixteenths
numbers times two
drawn for a 10
sample was fitted in 14
fitting size: 10
the pattern shows size 14
size shown: 14
counting starts with 8
zero size: 14
0 = size 14
base pattern 14
size 14 = 0
steps start with the largest
steps taken from right to left
from right to left
counted from the right
the last column is the base
first column = zero
grade runs from 14 to 10
in tenth of inches
mm throughout
height is x
one stands for a sixteenth
cells show eighths
each number is a tenth
every row in sixteenths
the unit is a quarter inch
1 counts 1/8 in
2 = 1/8
drawn on size 14
the drawn size is 10
block drafted for 14
fitted for 16
reference size 14
nest starts on 10
start size 14
growth counted from the top size
growth is from the right
increments run from 16 to 10
rule starts from 8
all steps reversed
width = y
axes swapped
horizontal is y
y goes from hem to waist
minus is up
rel. to 14
taille de base 14
Basis 14
full girth grade, divide by four
multiply every value by 2.54
values in percent
growth per two sizes
quarters of an inch
drawn at 1/4
1 square = 1 cm
`;
const NOTES = `
third toile, spring fitting
graded by Mira on 12 May
check the dart at size 14
size 10 sews up quickly
cut 2 in wool, 1 in lining
use a 9 in zip
walk the side seams before cutting
print at 100 % and measure the square
grain parallel to center front
sheet 2 of 3
12 points
four sizes
sizes 10 to 14
graded up to 14
grade 1/2 in a size
quarter skirt, half of the front
1 in = 2.54 cm
version 3, 14 March
fitted on Anna, waist 28 in
ease of 1 in at the hip
sizes go up by 2
side seam moves out by 1/4 in
hem stays level
y down, x out
moves are from the base
base size 12
drawn full size on dotted paper
waist eased by 1/2 in onto the band
pattern 12
notch 3 in above the hem
zip on the left
turn up the hem
lower the waist at the front
all points checked
rules by Ida, first try
lining 1 in shorter
dart moves by half
right half of the back
toile 2 in cotton
double darts
values from the old card
size names as on the label
page 1/2
rev. 4
draft of 3/11
steps agreed with the factory
14 oz denim
proof in 16 colors
from Lena's block of last year
see card 14 in the box
a size 14 model wore it
check side seams after grading
size 16 was added later
the back dart is longer than the front one
press toward center
width at hem 40 in
darts: 2
not for stretch cloth
for linen and wool
made for autumn
first grade by hand, then checked
hip line 8 in below the waist
hem level on all sizes
the front is cut on the fold
smallest size has one dart
largest size is 14
steps grow above 14
break at 14
grade breaks after size 12
steps are larger from 14 on
even steps of 1 in
increments from the shop's chart
copied from sheet 3
scanned at 300 dpi
room 12, shelf 4
order 1016
client: North & Daughters
season 26/27
ink of size 10 is red
10 blue, 12 red, 14 green
dart depth 1/2 in
every edge is straight
units sold: 40
Atelier sample, do not cut
up to size 24 on request
sizes in US numbers
EU 40 = US 10
12 = M
size 12 is our M
hem to the floor in size 14
steps counted twice by Ida
24 mm button at the waist
waist 1 cm above the navel
in stock since 1998
20 in zip
10 = 38, 12 = 40, 14 = 42
even rules
base rules for all sizes
drawn by Ida
one size in the block
cut 1
1 of 3
grade 2
rule 5
moves in the front only
a quarter
y down
x to the right
largest size 14
smallest 10
block of 2025
true to size
sample, red cloth
start at the waist
step 2: sew the darts
widths and lengths as worn
all lengths true
nested with the lining
nest of three
quarter inch ruler used
97 % cotton, 3 % elastane
squared paper
drawn in pencil
`;
const lines = (text: string) => text.trim().split('\n');

it.each(lines(TALK))('"%s" is refused in rules and in patterns', (line) => {
  expectRefusal(() => ruled(line), 'sheet-malformed', { file: 'rules.csv', row: 1 });
  expectRefusal(() => readPattern(`# ${line}\n${FRONT}`, 'base.csv'), 'sheet-malformed', {
    file: 'base.csv',
    row: 1,
  });
});

// They all have one reader, so some lines tell.
const some = (text: string) => lines(text).filter((_, i) => i % 8 === 0);

it.each(some(TALK))('"%s" is refused by who assesses and infers', (line) => {
  expectRefusal(() => marked(line), 'sheet-malformed', { file: 'sheet.csv', row: 1 });
  expectRefusal(() => inferred(line), 'sheet-malformed', { file: 'sheet.csv', row: 1 });
});

it.each(lines(NOTES))('"%s" is a note', (line) => {
  expect(ruled(line).sizes).toHaveLength(4);
  expect(readPattern(`# ${line}\n${FRONT}`, 'base.csv').base).toBe('12');
});

it.each(some(NOTES))('"%s" is a note to who assesses and infers', (line) => {
  expect(marked(line).cells.length).toBeGreaterThan(0);
  expect(inferred(line).base).toBe('12');
});

it.each(['steps from size to size', 'each number is the difference between sizes', 'steps'])(
  '"%s" is refused where moves from the base stand, and true of steps',
  (line) => {
    expectRefusal(() => marked(line), 'sheet-malformed', { file: 'sheet.csv', row: 1 }, 'step_dx');
    expectRefusal(() => inferred(line), 'sheet-malformed', { file: 'sheet.csv', row: 1 });
    expect(ruled(line).sizes).toHaveLength(4);
  },
);

it('steps that a line calls cumulative are refused, and moves from the base are that', () => {
  const place = { file: 'rules.csv', row: 1 };
  for (const line of ['cumulative', 'accumulated'])
    expectRefusal(() => ruled(line), 'sheet-malformed', place, 'no steps');
  expect(inferred('cumulative').base).toBe('12');
});

it('two statements in one line are both read', () => {
  const pattern = readPattern(FRONT.replace('unit: in', 'unit cm, y up'), 'base.csv');
  expect(pattern).toMatchObject({ unit: 'cm', countsUp: true });
  const sheet = `# unit cm, y up\n${RULES.replace('1/4,0', '1,-0.5')}`;
  const moves = graded(FRONT, sheet).rules.ruled[0]?.get(4)?.moves;
  // From 12 to 14, in mm with y down.
  expect(moves?.[2]).toEqual({ x: 10, y: 5 });
});

it.each(['cm', 'all in cm', 'sixteenths', 'half scale', 'in 16ths'])(
  'the note "%s" beside a number is refused in rules, patterns and seams',
  (note) => {
    const code = note.includes('cm') ? 'unit-contradicted' : 'sheet-malformed';
    const sheet = `# unit: in\npoint,axis,10,12,14,note\nfront.side_hip,x,-1/4,0,1/4,${note}\n`;
    const place = { file: 'sheet.csv', row: 3, column: 6 };
    expectRefusal(() => inferIncrements({ sheet, file: 'sheet.csv' }), code, place);
    const pattern = `# unit: in\npoint,x,y,note\na.b,0,0,${note}\na.c,9,0,\na.d,9,9,\n`;
    const own = { file: 'base.csv', row: 3, column: 4 };
    expectRefusal(() => readPattern(pattern, 'base.csv'), code, own);
    const seams = `edge,sewn_to,ease,note\nfront.side,back.side,2,${note}\n`;
    const eased = { file: 'seams.csv', row: 2, column: 4 };
    expectRefusal(() => readSeams(seams, 'seams.csv', PATTERN), code, eased);
  },
);

it.each(['1/2 in', 'in', 'in grain', 'as drawn', 'taken in 1/2 in', 'see sheet 2'])(
  'the note "%s" beside a number is none of that',
  (note) => {
    const sheet = `# unit: in\npoint,axis,10,12,14,note\nfront.side_hip,x,-1/4,0,1/4,${note}\n`;
    expect(inferIncrements({ sheet, style: 'pencil' }).base).toBe('12');
  },
);

it('an axis or a column with a minus before it, and a size that is marked as the base, are refused', () => {
  const place = { file: 'sheet.csv', row: 3 };
  for (const [head, axis, at] of [
    ['14', '-dy', { column: 2 }],
    ['14', '\u2212x', { column: 2 }],
    ['14 (base)', 'x', { row: 2, column: 5 }],
    ['Base 14', 'x', { row: 2, column: 5 }],
  ] as const) {
    const sheet = `# unit: in\npoint,axis,10,12,${head}\nfront.side_hip,${axis},-1/4,0,1/4\n`;
    const call = () => inferIncrements({ sheet, file: 'sheet.csv' });
    expectRefusal(call, 'sheet-malformed', { ...place, ...at });
  }
  const pattern = FRONT.replace('x,y,kind', 'x,-y,kind');
  const column = { file: 'base.csv', row: 3, column: 4 };
  expectRefusal(() => readPattern(pattern, 'base.csv'), 'column-unknown', column);
});

it.each([
  'moves are for the whole skirt',
  'growth in full girth',
  'girth steps',
  'all cells are totals',
])('"%s" is refused in rules, where points move by a part of a girth', (line) => {
  expectRefusal(() => ruled(line), 'sheet-malformed', { file: 'rules.csv', row: 1 }, 'girths');
});

it.each(['whole numbers', 'the whole skirt', 'girth grows by 1 in a step', 'skirt rules'])(
  '"%s" is a note beside rules',
  (line) => {
    expect(ruled(line).sizes).toHaveLength(4);
  },
);

it('an allowance stands in the pattern, and is refused in rules', () => {
  const place = { file: 'rules.csv', row: 1 };
  expectRefusal(() => ruled('allowance: 5/8 in'), 'sheet-malformed', place, 'pattern');
});
