/** The linter as the project sets it up sees all files, and what is wrong in any way that it is to see. */
import { rmSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { describe, expect, it } from 'vitest';
import { faultsIn, linter, plant, seedbed, sourceFiles } from '../lint/linter';

describe('the linter', () => {
  it('is given every file of src', () => {
    const given = linter(resolve('.'), '--debug=files').replaceAll('\\', '/').split('\n');
    expect(sourceFiles().length).toBeGreaterThan(100);
    for (const file of sourceFiles()) expect(given).toContain(`src/${file}`);
  });

  it('holds all guards, the compiler, and what may be named in which room', () => {
    const place = seedbed();
    try {
      const title = '/** Where the page stands. */\nexport const TITLE = document.title;\n';
      plant(join(place, 'src/page/app/title.tsx'), title);
      plant(
        join(place, 'src/cli/words.ts'),
        "/** Of the base. */\nexport const OPTION = '--base';\n",
      );
      const lines = [
        "import { OPTION } from '../cli/words';",
        'export const inch = 25.4;',
        '/** Whether a length is next to nothing. */',
        'export const isNone = (length: number) => length < 0.05;',
        '/** The option, and no number. */',
        "export const NUMBER: number = OPTION + '--chart';",
        'void Promise.resolve(1).then((one) => {',
        '  one;',
        '});',
        'Promise.resolve(2);',
        title,
      ];
      plant(join(place, 'src/grade/planted.ts'), lines.join('\n'));
      const faults = faultsIn(place, 'src').map(({ filename, code, labels }) => {
        expect(filename.replaceAll('\\', '/')).toBe('src/grade/planted.ts');
        return `${labels[0]?.span.line ?? 0} ${code}`;
      });
      expect(faults.sort()).toEqual([
        '1 house(import-order)',
        '10 typescript(no-floating-promises)',
        '12 eslint(no-restricted-globals)',
        '2 house(conversion-factor)',
        '2 house(doc-comment)',
        '4 house(tolerance)',
        '6 house(option-words)',
        '6 typescript(TS2322)',
        '8 eslint(no-unused-expressions)',
      ]);
    } finally {
      rmSync(place, { recursive: true, force: true });
    }
  });
});
