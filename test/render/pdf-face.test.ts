import fontkit from '@cantoo/fontkit';
import type { PDFFont } from '@cantoo/pdf-lib';
import { PDFDocument } from '@cantoo/pdf-lib';
import { describe, expect, it } from 'vitest';
import { FONT_FILES } from '../../src/render/font-files';
import { face } from '../../src/render/pdf-face';
import { textWidth } from '../../src/render/type';

/** Thousandths of an em, from the published metrics of Helvetica and Helvetica-Bold (AFM, from memory). */
const WIDTHS = [
  ['A', 667, 722],
  ['W', 944, 944],
  ['i', 222, 278],
  ['m', 833, 889],
  ['5', 556, 556],
  [' ', 278, 278],
  ['%', 889, 889],
  ['é', 556, 556],
  ['½', 834, 834],
] as const;

/** Basic Latin to Latin Extended-A, Greek and Cyrillic (Unicode Standard, code charts). */
const RANGES = [
  [0x20, 0x7e],
  [0xa1, 0x17f],
  [0x386, 0x3ce],
  [0x401, 0x45f],
] as const;

describe('the font of printed files', async () => {
  const document = await PDFDocument.create({ updateMetadata: false });
  document.registerFontkit(fontkit);
  const embedded = async (weight: 'normal' | 'bold'): Promise<PDFFont> =>
    document.embedFont(FONT_FILES[weight].bytes, { subset: true });
  const [regular, bold] = [await embedded('normal'), await embedded('bold')];
  const known = new Set(regular.getCharacterSet());
  const characters = RANGES.flatMap(([from, to]) =>
    Array.from({ length: to - from + 1 }, (_, i) => from + i),
  )
    .filter((code) => known.has(code))
    .map((code) => String.fromCodePoint(code))
    .filter((character) => !/[\p{M}\p{C}]/u.test(character));

  it.each(WIDTHS)('has %j as wide as Helvetica', (character, normal, heavy) => {
    expect(Math.abs(1000 * face(regular).width(character) - normal)).toBeLessThan(1);
    expect(Math.abs(1000 * face(bold).width(character) - heavy)).toBeLessThan(1);
  });

  it('never needs more room than words are given', () => {
    expect(characters.length).toBeGreaterThan(450);
    for (const one of [face(regular), face(bold)])
      for (const character of characters)
        expect(one.width(character), character).toBeLessThanOrEqual(textWidth(character, 1));
  });

  it('sets words letter by letter: none is put together with the next, and no pair is kerned', () => {
    for (const one of [face(regular), face(bold)]) {
      for (const character of characters) expect(one.encoded(character)).toMatch(/^[0-9A-F]{4}$/i);
      for (const words of ['fi', 'AVATAR To', 'е\u0308й'])
        expect(one.encoded(words)).toHaveLength(4 * [...words.normalize('NFC')].length);
      expect(one.width('AVA')).toBe(one.width('A') + one.width('V') + one.width('A'));
    }
  });
});
