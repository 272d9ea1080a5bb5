/** Charts as people really have them: messy, each with how it ends and what is said. Our own invention. */

/** A chart and how `check` ends for it. */
export interface MessyChart {
  readonly what: string;
  readonly text: string;
  readonly ends: 0 | 1 | 2;
  /** Words that are said, or none. */
  readonly says: string;
}

/** Spreadsheet exports, letters and copies of screens. */
export const MESSY: readonly MessyChart[] = [
  {
    what: 'a title, empty rows, a legend below',
    text:
      'Skirts autumn,,,\n,,,\nunit: cm,,,\nmeasurement,S,M,L\nwaist,66,70,74\nhips,92,96,100\n,,,\n' +
      '# all on the body,,,\n',
    ends: 0,
    says: '3 sizes, centimeters',
  },
  {
    what: 'semicolons, decimal commas, a byte order mark and CR LF',
    text: '\uFEFF# unit: cm\r\nsize;waist;hip\r\n36;66,5;92,5\r\n38;70,5;96,5\r\n40;74,5;100,5\r\n',
    ends: 0,
    says: '3 sizes',
  },
  {
    what: 'tabs, as pasted from a page, with nothing behind the numbers',
    text: '# unit: in\nmeasurement\t8\t10\t12\nWaist\t26\t27\t28\nHip\t36\t37\t38\n',
    ends: 0,
    says: '3 sizes, inches',
  },
  {
    what: 'quoted cells, inch marks and mixed fractions',
    text: '"measurement (in)","8","10"\n"waist","26 1/2""","27½"\n"hip",36-1/2,"37 1/2"\n',
    ends: 0,
    says: '2 sizes',
  },
  {
    what: 'sizes from large to small',
    text: '# unit: in\nmeasurement,12,10,8\nwaist,28,27,26\nhip,38,37,36\n',
    ends: 0,
    says: '3 sizes',
  },
  {
    what: 'a column of tolerances',
    text: '# unit: in\nmeasurement,8,10,tol\nwaist,26,27,1/4\nhip,36,37,1/4\n',
    ends: 0,
    says: 'Not read: messy.csv row 2, column 4 "column tol"',
  },
  {
    what: 'a step where a size should be',
    text: '# unit: in\nmeasurement,8,10,grade\nwaist,26,27,1\nhip,36,37,1\n',
    ends: 0,
    says: 'Not read: messy.csv row 2, column 4 "column grade"',
  },
  {
    what: 'a date in a row that is not needed',
    text: '# unit: in\nmeasurement,8,10\nwaist,26,27\nhip,36,37\nwaist_to_hip,7-Aug,8\n',
    ends: 2,
    says: 'column 2 (waist_to_hip, size 8)',
  },
  {
    what: 'a date in the head',
    text: '# unit: in\nmeasurement,8-Oct,12\nwaist,26,27\nhip,36,37\n',
    ends: 2,
    says: 'spreadsheet programs make of',
  },
  {
    what: 'an error of a spreadsheet',
    text: '# unit: in\nmeasurement,8,10\nwaist,26,#REF!\nhip,36,37\n',
    ends: 2,
    says: 'Got: #REF!',
  },
  {
    what: 'a decimal point left out',
    text: '# unit: cm\nmeasurement,S,M,L\nwaist,66,705,74\nhip,92,96,100\n',
    ends: 2,
    says: 'did you mean 70.5',
  },
  {
    what: 'a hip typed in inches among centimeters',
    text: '# unit: cm\nmeasurement,S,M,L\nwaist,66,70,74\nhip,36,38,40\n',
    ends: 2,
    says: 'hip_girth',
  },
  {
    what: 'no unit at all',
    text: 'measurement,S,M\nwaist,66,70\nhip,92,96\n',
    ends: 2,
    says: 'does not say in which unit',
  },
  {
    what: 'two units',
    text: '# unit: cm\nmeasurement (in),8,10\nwaist,26,27\nhip,36,37\n',
    ends: 2,
    says: 'unit',
  },
  {
    what: 'a size twice',
    text: '# unit: in\nmeasurement,8,8\nwaist,26,27\nhip,36,37\n',
    ends: 2,
    says: 'two sizes have one name',
  },
  {
    what: 'the waist twice under two names',
    text: '# unit: in\nmeasurement,8,10\nwaist,26,27\nwaist girth,26,27\nhip,36,37\n',
    ends: 2,
    says: 'waist_girth twice',
  },
  {
    what: 'a quote that never ends',
    text: '# unit: in\nmeasurement,8,10\nwaist,"26,27\nhip,36,37\n',
    ends: 2,
    says: 'a quoted cell does not end',
  },
  {
    what: 'a size label on two lines',
    text: '# unit: in\nmeasurement,"8\nsmall",10\nwaist,26,27\nhip,36,37\n',
    ends: 2,
    says: 'line break',
  },
  {
    what: 'a waist that shrinks as the sizes grow',
    text: '# unit: in\nmeasurement,8,10,12\nwaist,28,27,26\nhip,36,37,38\n',
    ends: 1,
    says: 'fail',
  },
  {
    what: 'a page of a web site',
    text: '<!doctype html><p>Not found</p>\n',
    ends: 2,
    says: 'no table as text',
  },
  { what: 'nothing', text: '', ends: 2, says: 'the chart is empty' },
  { what: 'a program', text: '\u007fELF\u0002\u0001\u0001\u0000', ends: 2, says: 'character' },
];
