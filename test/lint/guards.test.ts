/** Each guard sees what is planted, and lets pass what is right. */
import { existsSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { beforeAll, describe, expect, it } from 'vitest';
import guards from './guards.js';
import { faultsIn, plant, seedbed, sourceFiles } from './linter';
import { ROOMS, roomOf } from './rooms.js';

type Guard = keyof typeof guards.rules;

/** The file and the text of every case, each in a src of its own, beside the guard that looks at it. */
const cases: { readonly guard: Guard; readonly file: string; readonly text: string }[] = [];
const found: string[][] = [];

beforeAll(() => {
  const place = seedbed();
  try {
    const overrides = Object.keys(guards.rules).map((guard) => ({
      files: [`${guard}/**`],
      rules: { [`house/${guard}`]: 'error' },
    }));
    const jsPlugins = ['./test/lint/guards.js'];
    const config = { plugins: [], categories: { correctness: 'off' }, jsPlugins, overrides };
    writeFileSync(join(place, '.oxlintrc.json'), JSON.stringify(config));
    for (const [at, { guard, file, text }] of cases.entries()) {
      found[at] = [];
      plant(join(place, guard, String(at), 'src', file), text);
    }
    for (const { filename, code, message } of faultsIn(place, '.')) {
      const [guard = '', at = ''] = filename.replaceAll('\\', '/').split('/');
      const messages = guards.rules[guard as Guard].meta?.messages ?? {};
      const kind = Object.keys(messages).find((name) => {
        const words = (messages[name] ?? '').split(/\{\{ \w+ \}\}/u);
        return words.every((part) => message.includes(part));
      });
      found[Number(at)]?.push(kind ?? `${code}: ${message}`);
    }
  } finally {
    rmSync(place, { recursive: true, force: true });
  }
});

/** A test that a guard finds faults of these kinds, and no others, in a text at a path below src. */
function finds(guard: Guard, file: string, text: string, kinds: readonly string[]): void {
  const at = cases.push({ guard, file, text }) - 1;
  it(`${kinds.join(', ') || 'nothing'} in ${file}: ${text}`, () => {
    expect(found[at]).toEqual(kinds);
  });
}

describe('the order of rooms', () => {
  const order = (file: string, text: string, ...kinds: string[]) => {
    finds('import-order', file, text, kinds);
  };

  describe.each([
    ['a value', "import { a } from '../grade/stack';"],
    ['a type', "import type { A } from '../grade/stack';"],
    ['what is passed on', "export { a } from '../grade/stack';"],
    ['all that is passed on', "export * from '../grade/stack';"],
    ['what is loaded late', "const a = await import('../grade/stack');"],
    ['a type in place', "type A = import('../grade/stack').A;"],
    ['the loose file behind', "import { a } from '../index';"],
  ])('forbids %s from a room behind', (_, text) => {
    order('chart/planted.ts', text, 'against');
    order('cli/planted.ts', text);
  });

  describe('allows the own room, those before, packages and published tables', () => {
    const text = [
      "import { a } from './stack';",
      "import { b } from '../given/pattern';",
      "import { c } from '../units';",
      "import { d } from 'mathjs';",
      "import e from '../../size-charts/standards/a.csv';",
    ].join('\n');
    order('grade/planted.ts', text);
  });

  describe('holds between the rooms of a room', () => {
    order('study/mark/planted.ts', "import { a } from '../infer/board';", 'against');
    order('study/infer/planted.ts', "import { a } from '../mark/slip';");
    order('study/infer/planted.ts', "import { a } from '../../cli/io';", 'against');
  });

  describe('forbids files and folders that are no room, and what is outside', () => {
    order('drawer.ts', '', 'roomless');
    order('drawer/planted.ts', '', 'roomless');
    order('cli/planted.ts', "import { a } from '../drawer/a';", 'roomless');
    order('cli/planted.ts', "import { a } from '../../test/skirts';", 'outside');
    order('words.d.ts', '');
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
  const factors = (text: string, kinds: string[], file = 'grade/planted.ts') => {
    finds('conversion-factor', file, text, kinds);
  };

  // 1 in = 25.4 mm, 1 ft = 12 in, 1 yd = 36 in (agreement of 1959); a point of type is 1/72 in here.
  describe.each([
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
    '127 / 5',
    "Number('25.4')",
    "+'2.54'",
  ])('%s stands in units.ts alone', (number) => {
    factors(`const a = ${number};`, ['factor']);
    factors(`const a = ${number};`, [], 'units.ts');
  });

  describe.each(['25', '72', '[72, 36]', "'25.4'", '`x / 72`', '0.72', '25.5', '12.7', '// 25.4'])(
    '%s is none',
    (text) => {
      factors(`const a = \n${text}\n;`.replace(/\n(\/\/.*)\n/u, '1; $1\n'), []);
    },
  );
});

describe('doc comments', () => {
  const comments = (text: string, ...kinds: string[]) => {
    finds('doc-comment', 'grade/planted.ts', text, kinds);
  };

  describe.each([
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
    comments(text, 'missing');
    comments(`/** Where front and back meet. */\n${text}`);
    comments(`// Where front and back meet.\n${text}`, 'missing');
    comments(`/* Where front and back meet. */\n${text}`, 'missing');
    comments(`/** The side seam. */\n${text}`, 'empty');
    comments(`/** */\n${text}`, 'empty');
  });

  describe('are not those of the file, nor of what stands above', () => {
    comments('/** Of the file. */\n\nexport const a = 1;', 'missing');
    comments('/** Of the file, and of this. */\nexport const a = 1;');
    comments('/** A first one. */\nexport const a = 1;\nexport const b = 1;', 'missing');
  });

  describe('are not asked for where nothing is exported, or only passed on', () => {
    comments("const a = 1;\nexport { b } from './b';\nexport * from './c';");
  });
});

describe('tolerances', () => {
  const bounds = (text: string, kinds: string[], file = 'grade/planted.ts') => {
    finds('tolerance', file, text, kinds);
  };

  describe.each([
    ['a literal beside what is compared', 'const is = a < 0.05;'],
    ['a literal in front of it', 'const is = 1e-9 >= a;'],
    ['a negative one', 'const is = a > -0.05;'],
    ['a term', 'const is = a <= b - 0.05;'],
    ['a factor', 'const is = a < 0.1 * Math.abs(b);'],
    ['a quotient', 'const is = a < 1 / 16;'],
    ['what must be met', 'const is = a === 0.02;'],
    ['a floor', 'const b = Math.max(a, 0.03);'],
    ['a ceiling by name', 'const MOST = 0.03;\nconst b = Math.min(a, MOST);'],
    ['a constant of the file', 'const NEAR = 0.05;\nconst is = a < NEAR;'],
    ['one that is declared below', 'const is = () => a < NEAR * b;\nconst NEAR = 0.5;'],
    ['one that others use', 'export const NEAR = 0.05;\nconst is = -NEAR > a;'],
    ['what is nearly nothing, for others', 'export const NEAR = 1e-6;'],
    ['what is nearly nothing, wherever it stands', 'const b = Math.ceil(a - 1e-9);'],
  ])('stand in tolerance.ts: %s', (_, text) => {
    bounds(text, ['bound']);
    bounds(text, [], 'tolerance.ts');
  });

  describe.each([
    ['a whole number', 'const is = a < 2 && b > 1e9;'],
    ['the middle between 0 and 1', 'const is = a < 0.5;'],
    ['a whole floor', 'const b = Math.max(a, 1);'],
    ['a share that nothing is held against', 'const SHARE = 0.05;\nconst b = SHARE * a;'],
    ['what is known by name', "import { NEAR } from '../tolerance';\nconst is = a < NEAR;"],
    [
      'a constant that says what else it is',
      '/** Share. No tolerance: a majority. */\nexport const MOST = 0.5;\nconst is = a > MOST;',
    ],
  ])('are not %s', (_, text) => {
    bounds(text, []);
  });
});

describe('options', () => {
  const options = (text: string, kinds: string[], file = 'grade/planted.ts') => {
    finds('option-words', file, text, kinds);
  };

  describe.each(["'--base'", '"--base"', '`--base`', '`${1} --base`', '`${1} --base ${2}`'])(
    'stand in no text of the library: %s',
    (text) => {
      options(`const a = ${text};`, ['option']);
      options(`const a = ${text};`, [], 'cli/planted.ts');
    },
  );

  describe('may stand in comments and paths', () => {
    options("/** --base */ import '--base';", []);
  });
});
