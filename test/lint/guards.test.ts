/** Each guard sees what is planted, and lets pass what is right. */
import { existsSync, readFileSync } from 'node:fs';
import { join, resolve } from 'node:path';
import type { Rule } from 'eslint';
import { ESLint, Linter } from 'eslint';
import ts from 'typescript';
import tseslint from 'typescript-eslint';
import { describe, expect, it } from 'vitest';
import { conversionFactor } from './conversion-factor.js';
import { docComment } from './doc-comment.js';
import { importOrder } from './import-order.js';
import { ROOMS, roomOf } from './rooms.js';
import { sourceFiles } from './sources';
import { tolerance } from './tolerance.js';
import { types } from './types.js';

/** The ids of what a rule says of a text that stands at a path below src. */
function said(rule: Rule.RuleModule, file: string, text: string) {
  const linter = new Linter({ cwd: resolve('.') });
  const messages = linter.verify(
    text,
    {
      files: ['**/*.ts'],
      languageOptions: { parser: tseslint.parser },
      plugins: { house: { rules: { rule } } },
      rules: { 'house/rule': 'error' },
    },
    resolve('src', file),
  );
  for (const { fatal, message } of messages) expect(fatal, message).not.toBe(true);
  return messages.map(({ messageId }) => messageId);
}

describe('the order of rooms', () => {
  const order = (file: string, text: string) => said(importOrder, file, text);

  it.each([
    ['a value', "import { a } from '../grade/stack';"],
    ['a type', "import type { A } from '../grade/stack';"],
    ['what is passed on', "export { a } from '../grade/stack';"],
    ['all that is passed on', "export * from '../grade/stack';"],
    ['what is loaded late', "const a = await import('../grade/stack');"],
    ['a type in place', "type A = import('../grade/stack').A;"],
    ['the loose file behind', "import { a } from '../index';"],
  ])('forbids %s from a room behind', (_, text) => {
    expect(order('chart/planted.ts', text)).toEqual(['against']);
    expect(order('cli/planted.ts', text)).toEqual([]);
  });

  it('allows the own room, those before, packages and published tables', () => {
    const text = [
      "import { a } from './stack';",
      "import { b } from '../given/pattern';",
      "import { c } from '../units';",
      "import { d } from 'mathjs';",
      "import e from '../../size-charts/standards/a.csv';",
    ].join('\n');
    expect(order('grade/planted.ts', text)).toEqual([]);
  });

  it('holds between the rooms of a room', () => {
    expect(order('study/mark/planted.ts', "import { a } from '../infer/board';")).toEqual([
      'against',
    ]);
    expect(order('study/infer/planted.ts', "import { a } from '../mark/slip';")).toEqual([]);
    expect(order('study/infer/planted.ts', "import { a } from '../../cli/io';")).toEqual([
      'against',
    ]);
  });

  it('forbids files and folders that are no room, and what is outside', () => {
    expect(order('drawer.ts', '')).toEqual(['roomless']);
    expect(order('drawer/planted.ts', '')).toEqual(['roomless']);
    expect(order('cli/planted.ts', "import { a } from '../drawer/a';")).toEqual(['roomless']);
    expect(order('cli/planted.ts', "import { a } from '../../test/skirts';")).toEqual(['outside']);
    expect(order('words.d.ts', '')).toEqual([]);
  });

  it('is the order of the table in DEVELOPERS.md', () => {
    const table = readFileSync('DEVELOPERS.md', 'utf8')
      .split('## Rooms of src/')[1]
      ?.split('\n## ');
    const rows = (table?.[0] ?? '').split('\n').filter((line) => line.startsWith('| `'));
    const told = rows.flatMap((row) =>
      [...(row.split('|')[1] ?? '').matchAll(/`([^`]+)`/gu)].map(([, name = '']) => name),
    );
    const isFile = (room: string) => existsSync(`src/${room}.ts`);
    expect(told).toEqual(ROOMS.map((room) => (isFile(room) ? `${room}.ts` : `${room}/`)));
  });

  it('has a file in every room', () => {
    const used = new Set(sourceFiles().map(roomOf));
    expect(ROOMS.filter((_, place) => !used.has(place))).toEqual([]);
  });
});

describe('conversion factors', () => {
  const factors = (text: string, file = 'grade/planted.ts') => said(conversionFactor, file, text);

  // 1 in = 25.4 mm, 1 ft = 12 in, 1 yd = 36 in (agreement of 1959); a point of type is 1/72 in here.
  it.each([
    '25.4',
    '2.54',
    '254',
    '0.0254',
    '304.8',
    '30.48',
    '0.3048',
    '914.4',
    '91.44',
    '0.9144',
    '0.03937',
    '0.393701',
    '39.37',
    '0.352778',
    '0.35278',
    '2.8346',
    'x / 72',
    '72 * x',
  ])('%s stands in units.ts alone', (number) => {
    expect(factors(`const a = ${number};`)).toEqual(['factor']);
    expect(factors(`const a = ${number};`, 'units.ts')).toEqual([]);
  });

  it.each(['25', '72', '[72, 36]', "'25.4'", '`x / 72`', '0.72', '25.5', '12.7', '// 25.4'])(
    '%s is none',
    (text) => {
      expect(factors(`const a = \n${text}\n;`.replace(/\n(\/\/.*)\n/u, '1; $1\n'))).toEqual([]);
    },
  );
});

describe('doc comments', () => {
  const comments = (text: string) => said(docComment, 'grade/planted.ts', text);

  it.each([
    'export function sideSeam(): void {}',
    'export async function sideSeam() {}',
    'export const sideSeam = 1;',
    'export type SideSeam = string;',
    'export interface SideSeam {}',
    'export class SideSeam {}',
    'export enum SideSeam {}',
    'export default function sideSeam() {}',
    'const sideSeam = 1;\nexport { sideSeam };',
    'interface SideSeam {}\nexport type { SideSeam };',
  ])('are missed above %s', (text) => {
    expect(comments(text)).toEqual(['missing']);
    expect(comments(`/** Where front and back meet. */\n${text}`)).toEqual([]);
    expect(comments(`// Where front and back meet.\n${text}`)).toEqual(['missing']);
    expect(comments(`/* Where front and back meet. */\n${text}`)).toEqual(['missing']);
    expect(comments(`/** The side seam. */\n${text}`)).toEqual(['empty']);
    expect(comments(`/** */\n${text}`)).toEqual(['empty']);
  });

  it('are not those of the file, nor of what stands above', () => {
    expect(comments('/** Of the file. */\n\nexport const a = 1;')).toEqual(['missing']);
    expect(comments('/** Of the file, and of this. */\nexport const a = 1;')).toEqual([]);
    expect(comments('/** A first one. */\nexport const a = 1;\nexport const b = 1;')).toEqual([
      'missing',
    ]);
  });

  it('are not asked for where nothing is exported, or only passed on', () => {
    expect(comments("const a = 1;\nexport { b } from './b';\nexport * from './c';")).toEqual([]);
  });
});

describe('tolerances', () => {
  const bounds = (text: string, file = 'grade/planted.ts') => said(tolerance, file, text);

  it.each([
    ['a literal beside what is compared', 'const is = a < 0.05;'],
    ['a literal in front of it', 'const is = 1e-9 >= a;'],
    ['a negative one', 'const is = a > -0.05;'],
    ['a term', 'const is = a <= b - 0.05;'],
    ['a factor', 'const is = a < 0.1 * Math.abs(b);'],
    ['a quotient', 'const is = a < 1 / 16;'],
    ['a constant of the file', 'const NEAR = 0.05;\nconst is = a < NEAR;'],
    ['one that is declared below', 'const is = () => a < NEAR * b;\nconst NEAR = 0.5;'],
    ['one that others use', 'export const NEAR = 0.05;\nconst is = -NEAR > a;'],
    ['what is nearly nothing, for others', 'export const NEAR = 1e-6;'],
    ['what is nearly nothing, wherever it stands', 'const b = Math.ceil(a - 1e-9);'],
  ])('stand in tolerance.ts: %s', (_, text) => {
    expect(bounds(text)).toEqual(['bound']);
    expect(bounds(text, 'tolerance.ts')).toEqual([]);
  });

  it.each([
    ['a whole number', 'const is = a < 2 && b > 1e9;'],
    ['the middle between 0 and 1', 'const is = a < 0.5;'],
    ['a share that nothing is held against', 'const SHARE = 0.05;\nconst b = SHARE * a;'],
    ['what is known by name', "import { NEAR } from '../tolerance';\nconst is = a < NEAR;"],
    [
      'a constant that says what else it is',
      '/** Share. No tolerance: a majority. */\nexport const MOST = 0.5;\nconst is = a > MOST;',
    ],
  ])('are not %s', (_, text) => {
    expect(bounds(text)).toEqual([]);
  });
});

describe('types', () => {
  /** The texts of the faults that the rule finds in a file of a program of one file. */
  const faults = (text: string, options: ts.CompilerOptions = {}) => {
    const file = resolve('src', 'planted.ts');
    const host = ts.createCompilerHost({});
    const read = host.getSourceFile.bind(host);
    host.getSourceFile = (name, version) =>
      name === file ? ts.createSourceFile(name, text, version, true) : read(name, version);
    const strict = { strict: true, types: [], target: ts.ScriptTarget.ES2023, ...options };
    const programs = [ts.createProgram([file], strict, host)];
    const messages = new Linter({ cwd: resolve('.') }).verify(
      text,
      {
        files: ['**/*.ts'],
        languageOptions: { parser: tseslint.parser, parserOptions: { programs } },
        plugins: { house: { rules: { types } } },
        rules: { 'house/types': 'error' },
      },
      file,
    );
    return messages.map(({ message, line, column }) => `${line}:${column} ${message}`);
  };

  it('are those of the compiler, where it finds the fault', () => {
    expect(faults("export const a: string = 'b';")).toEqual([]);
    expect(faults("export const a = 1;\nexport const b: number = 'c';")).toEqual([
      "2:14 TS2322: Type 'string' is not assignable to type 'number'.",
    ]);
    expect(faults("import { a } from './nowhere';\na();")).toEqual([
      expect.stringContaining('TS2307'),
    ]);
  });

  it('tell of settings that contradict each other, too', () => {
    expect(faults('export const a = 1;', { emitDeclarationOnly: true })).toEqual([
      expect.stringContaining('TS5069'),
    ]);
  });

  it('are not passed over where no program has been built', () => {
    expect(said(types, 'planted.ts', 'export const a = 1;')).toEqual(['unbuilt']);
  });
});

describe('the guards', () => {
  it('watch every file of src', async () => {
    const eslint = new ESLint();
    for (const file of sourceFiles().filter((name) => !name.endsWith('.d.ts'))) {
      const config = (await eslint.calculateConfigForFile(join('src', file))) as Linter.Config;
      for (const rule of ['import-order', 'conversion-factor', 'doc-comment', 'tolerance'])
        expect([config.rules?.[`house/${rule}`]].flat()[0], `${rule} of ${file}`).toBe(2);
    }
  });

  it('watch the types of every file that the compiler is told of', async () => {
    const { config } = ts.readConfigFile('tsconfig.json', (name) => readFileSync(name, 'utf8')) as {
      config: unknown;
    };
    const eslint = new ESLint();
    const { fileNames } = ts.parseJsonConfigFileContent(config, ts.sys, resolve('.'));
    expect(fileNames.length).toBeGreaterThan(sourceFiles().length);
    for (const file of fileNames) {
      expect(await eslint.isPathIgnored(file), file).toBe(false);
      const own = (await eslint.calculateConfigForFile(file)) as Linter.Config;
      expect([own.rules?.['house/types']].flat()[0], file).toBe(2);
    }
  });
});
