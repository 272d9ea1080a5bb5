import { describe, expect, it } from 'vitest';
import { FONT_FILES } from '../../src/render/font-files';
import { face } from '../../src/render/pdf-face';
import { trueType } from '../../src/render/true-type';
import { subsetOf } from '../../src/render/true-type-subset';
import { textWidth } from '../../src/render/type';

const regular = trueType(FONT_FILES.normal.bytes);
const bold = trueType(FONT_FILES.bold.bytes);

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

describe('the font of printed files', () => {
  it.each(WIDTHS)('has %j as wide as Helvetica', (character, normal, heavy) => {
    const width = (font: typeof regular): number => 1000 * font.advanceOf(font.glyphOf(character));
    expect(Math.abs(width(regular) - normal)).toBeLessThan(1);
    expect(Math.abs(width(bold) - heavy)).toBeLessThan(1);
  });

  it('never needs more room than words are given', () => {
    const faces = [face('a', regular), face('b', bold)];
    const ranges = [
      [0x20, 0x7e],
      [0xa1, 0x17f],
      [0x386, 0x3ce],
      [0x401, 0x45f],
    ] as const;
    let tried = 0;
    for (const [from, to] of ranges) {
      for (let code = from; code <= to; code++) {
        const character = String.fromCodePoint(code);
        if (regular.glyphOf(character) === 0 || /[\p{M}\p{C}]/u.test(character)) continue;
        tried++;
        for (const one of faces)
          expect(one.width(character), character).toBeLessThanOrEqual(textWidth(character, 1));
      }
    }
    expect(tried).toBeGreaterThan(450);
  });

  it('gives a part with the outlines, widths and sums of the whole', () => {
    // Accented letters are put together of others: those come along.
    const glyphs = Array.from('AéAЮΩ½ ', regular.glyphOf);
    const bytes = subsetOf(regular, glyphs);
    expect(bytes.length).toBeLessThan(6000);
    const part = trueType(bytes.slice());
    const sum = [...bytes.keys()]
      .filter((i) => i % 4 === 0)
      .reduce((all, i) => (all + Buffer.from(bytes).readUInt32BE(i)) % 2 ** 32, 0);
    expect(sum).toBe(0xb1b0afba);
    glyphs.forEach((glyph, i) => {
      expect(part.advanceOf(i + 1)).toBe(regular.advanceOf(glyph));
      const [mine, whole] = [part.outlineOf(i + 1), regular.outlineOf(glyph)];
      expect(mine.length).toBe(4 * Math.ceil(whole.length / 4));
      // Only the numbers of the letters that an accented one is put together of are others.
      const isPutTogether = whole.length > 0 && Buffer.from(whole).readInt16BE(0) < 0;
      expect(isPutTogether).toBe('é½'.includes('AéAЮΩ½ '.charAt(i)));
      if (!isPutTogether) expect(Buffer.compare(mine.subarray(0, whole.length), whole)).toBe(0);
    });
  });
});
