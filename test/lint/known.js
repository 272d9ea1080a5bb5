/**
 * What breaks a guard today. Each list only shrinks: an entry that is no longer needed fails, and
 * none may be added.
 * @type {Readonly<Record<'import-order' | 'conversion-factor', readonly Known[]>>}
 *
 * @typedef {object} Known
 * @property {string} file path from src
 * @property {string} what the import, or the number as written
 */
export const KNOWN = {
  'import-order': [
    { file: 'given/grade-given.ts', what: '../grade/graded-range' },
    { file: 'given/grade-given.ts', what: '../grade/rounding' },
    { file: 'given/grade-given.ts', what: '../grade/rules' },
    { file: 'given/grade-given.ts', what: '../grade/stack' },
    { file: 'given/read-pattern.ts', what: '../seams/seam-pairs' },
    { file: 'grade/grade-range.ts', what: '../measure/finished' },
    { file: 'grade/grade-range.ts', what: '../measure/made-pieces' },
    { file: 'grade/grade-range.ts', what: '../measure/zip' },
    { file: 'grade/graded-range.ts', what: '../measure/finished' },
    { file: 'jobs/grade-spec.ts', what: '../files/result-files' },
    { file: 'jobs/grade-spec.ts', what: '../files/spec-tables' },
    { file: 'rule-sheet/read-given-rules.ts', what: '../given/pattern' },
    { file: 'table/delimiter.ts', what: '../chart/vocabulary' },
  ],
  'conversion-factor': [
    { file: 'check/stride.ts', what: '25.4' },
    { file: 'fabric/fabric-needs.ts', what: '914.4' },
    { file: 'files/spec-tables.ts', what: '25.4' },
    { file: 'formula/formula.ts', what: '25.4' },
    { file: 'render/lay-sheet.ts', what: '25.4' },
    { file: 'render/lay-sheet.ts', what: '914.4' },
    { file: 'render/pdf.ts', what: '72' },
    { file: 'render/pdf-content.ts', what: '25.4' },
    { file: 'render/pdf-content.ts', what: '72' },
    { file: 'study/mark/slips.ts', what: '2.54' },
    { file: 'tolerance.ts', what: '25.4' },
  ],
};
