/** What happens to files: slips of typing, of spreadsheets and editors, and of malice. */
import type { Random } from './random';

/** Cells that are not what should stand there. No word that a program prints by a fault of its own. */
const ODD_CELLS = [
  '',
  ' ',
  '-',
  '0',
  '-1',
  '-0',
  '1e9',
  '1e308',
  '1e-308',
  '999999999',
  '0.0000001',
  '2550000',
  '8000',
  '26 1/2',
  '26½',
  '1/0',
  '5/2',
  '7-Aug',
  '2026-08-07',
  '1.020',
  '67,5',
  '"',
  '""',
  "'",
  '=1+1',
  '@SUM(A1)',
  '#',
  '# 99',
  'front',
  'front.side_waist',
  'waist_girth',
  'hip_girth',
  'unit',
  'cm',
  'mm',
  'in',
  'tolerance',
  '8-10',
  '10',
  '12',
  'M',
  'corner',
  'curve',
  'dart',
  'constructor',
  '__proto__',
  'toString',
  '<script>',
  '&amp;',
  '../../x',
  '\u001b[2J',
  '\u202e',
  '\u0000',
  '\u2028',
  '\ud800',
  'é',
  '裙',
  '😀',
  'x'.repeat(99),
  'x'.repeat(3_000),
  '-'.repeat(200),
  '('.repeat(60),
];

/** Text put in at any place. */
const ODD_TEXT = [',', ';', '\t', '"', '\n', '\r', '\r\n', '#', ' ', '\uFEFF', '.', '/', '-', '1'];

type Slip = (text: string, random: Random) => string;

const onLines =
  (change: (lines: string[], random: Random) => void): Slip =>
  (text, random) => {
    const lines = text.split('\n');
    change(lines, random);
    return lines.join('\n');
  };

const onCells =
  (change: (cells: string[], random: Random) => void): Slip =>
  (text, random) =>
    onLines((lines) => {
      const i = random.below(lines.length);
      const line = lines[i] ?? '';
      // A drawing has no delimiters: its cell is its line.
      const cells = line.split(',');
      change(cells, random);
      lines[i] = cells.join(',');
    })(text, random);

const NUMBER = /\d+(?:\.\d+)?/gu;

const SLIPS: readonly Slip[] = [
  onLines((lines, random) => void lines.splice(random.below(lines.length), 1 + random.below(3))),
  onLines((lines, random) => {
    const i = random.below(lines.length);
    lines.splice(i, 0, ...lines.slice(i, i + 1 + random.below(6)));
  }),
  onLines((lines, random) => {
    const [i, k] = [random.below(lines.length), random.below(lines.length)];
    [lines[i], lines[k]] = [lines[k] ?? '', lines[i] ?? ''];
  }),
  onLines((lines, random) => {
    // An even number of lines is whole tags of a drawing.
    const i = 2 * random.below(Math.ceil(lines.length / 2));
    lines.splice(i, 2 * (1 + random.below(6)));
  }),
  onLines((lines) => void lines.reverse()),
  onCells((cells, random) => {
    cells[random.below(cells.length)] = random.of(ODD_CELLS);
  }),
  onCells((cells, random) => {
    cells[random.below(cells.length)] = random.of(ODD_CELLS);
  }),
  onCells((cells, random) => void cells.splice(random.below(cells.length), 1)),
  onCells(
    (cells, random) => void cells.splice(random.below(cells.length), 0, random.of(ODD_CELLS)),
  ),
  onCells((cells, random) => {
    const [i, k] = [random.below(cells.length), random.below(cells.length)];
    [cells[i], cells[k]] = [cells[k] ?? '', cells[i] ?? ''];
  }),
  // One number becomes another: ten times, a tenth, negative, a little more, or none.
  (text, random) => {
    const all = [...text.matchAll(NUMBER)];
    const found = all[random.below(Math.max(all.length, 1))];
    if (found === undefined) return text;
    const value = Number(found[0]);
    const other = random.of([value * 10, value / 10, -value, value * 1.01, value + 1, 0, 1e7]);
    return text.slice(0, found.index) + String(other) + text.slice(found.index + found[0].length);
  },
  (text, random) => {
    const i = random.below(text.length + 1);
    return text.slice(0, i) + random.of(ODD_TEXT) + text.slice(i);
  },
  (text, random) => {
    const i = random.below(text.length + 1);
    return text.slice(0, i) + text.slice(i + 1 + random.below(4));
  },
  (text, random) => text.slice(0, random.below(text.length + 1)),
  (text, random) => text.replaceAll(',', random.of([';', '\t', ' ', ', ', ',,'])),
  (text, random) => text.replaceAll('\n', random.of(['\r\n', '\r', '\n\n', '\n,,,\n'])),
  (text) => text.replace(/(\d)\.(\d)/gu, '$1,$2'),
  (text) => text.toUpperCase(),
  (text, random) => text + text.slice(random.below(text.length + 1)).repeat(1 + random.below(40)),
];

/** The text after a slip, or a few. */
export function slipped(text: string, random: Random): string {
  let result = text;
  const count = random.onceIn(2) ? 1 : 1 + random.below(4);
  for (let n = count; n > 0; n--) result = random.of(SLIPS)(result, random);
  return result;
}

/** A word after a slip, or a few, such as a formula. */
export function slippedWord(text: string, random: Random): string {
  let result = text;
  for (let n = random.below(3); n >= 0; n--) {
    const i = random.below(result.length + 1);
    const part = random.of(WORDS);
    result = result.slice(0, i) + part + result.slice(i + random.below(4));
  }
  return result;
}

const WORDS = [
  '+',
  '-',
  '*',
  '/',
  '^',
  '(',
  ')',
  ',',
  '.',
  ' ',
  '=',
  '0',
  '1e400',
  '2 in',
  '3 cm',
  'min(',
  'sqrt(',
  'atan(',
  'abs(',
  'waist_girth',
  'hip_girth',
  'skirt_length',
  'hip_ease',
  'waist_to_knee',
  'constructor',
  'x => x',
  'i',
  'e',
  'pi',
  '!',
  "'",
  '[1]',
  '{}',
  ';',
  '%',
  '½',
  '裙',
  '-'.repeat(60),
  '('.repeat(60),
];

/** How the bytes are saved: mostly UTF-8, else in another way, or with a byte that is none of a text. */
export function saved(text: string, random: Random): Uint8Array {
  switch (random.below(12)) {
    case 0:
      return Buffer.from(`\uFEFF${text}`, 'utf16le');
    case 1:
      return Buffer.from(text, 'latin1');
    case 2: {
      const bytes = Buffer.from(text);
      if (bytes.length > 0) bytes[random.below(bytes.length)] = random.below(256);
      return bytes;
    }
    default:
      return Buffer.from(text);
  }
}
