/** Sheets of whole styles with cut lines: what is drawn, what is hidden, and where the words are. */
import { describe, expect, it } from 'vitest';
import { boxesOverlap, grownBox } from '../../src/geometry/bounds';
import type { GradeResult } from '../../src/index';
import { chordsOf, isClear } from '../../src/render/chords';
import { nestSheet } from '../../src/render/nest-sheet';
import type { LinesShown } from '../../src/render/lines-shown';
import type { Scene } from '../../src/render/scene';
import { sizeSheet } from '../../src/render/size-sheet';
import { svg } from '../../src/render/svg';
import { drawingOf } from '../../src/files/drawing-files';
import { DEMO } from '../draft/shaped-pieces';
import { isWithin } from '../pattern/sewing-line';
import { flatPaths, flatTexts } from './flat';
import { all, get, having, readSvg } from './read-svg';
import { gradedOnce } from '../graded';

const STYLES = [
  ['pencil', {}],
  ['shared-pencil', {}],
  ['shared-drop', { waist_finish: '2' }],
  ['shared-a-line', { side_allowance: '0 in' }],
] as const;

function result(style: string, set: Readonly<Record<string, string>> = {}, lines?: LinesShown) {
  return gradedOnce({ ...DEMO, style, set, ...(lines === undefined ? {} : { lines }) });
}

function sheetsOf(graded: GradeResult): readonly Scene[] {
  const drawing = drawingOf(graded);
  return [nestSheet(drawing), sizeSheet(drawing, '2'), sizeSheet(drawing, '24')];
}

describe.each(STYLES)('sheets of %s', (style, set) => {
  describe.each(['net', 'cut', 'both'] as const)('with %s lines', (lines) => {
    const scenes = sheetsOf(result(style, set, lines));

    it('hide no line under words, and keep words apart', () => {
      for (const scene of scenes) {
        const texts = flatTexts(scene);
        const paths = flatPaths(scene).map(({ part, points }) => ({
          part,
          chords: chordsOf([points]),
        }));
        texts.forEach(({ text, box }, i) => {
          for (const other of texts.slice(i + 1))
            if (boxesOverlap(box, other.box)) throw new Error(`${text.words}/${other.text.words}`);
          const hidden = paths.find(({ chords }) => !isClear(box, chords));
          if (hidden !== undefined) throw new Error(`${text.words} on ${hidden.part}`);
        });
      }
    });

    it('keep the words of the zip allowance 1.5 mm from every line and notch', () => {
      for (const scene of scenes) {
        const zip = flatTexts(scene).filter(({ text }) => text.words.startsWith('ZIP'));
        expect(zip.length > 0).toBe(lines !== 'cut');
        for (const { box } of zip)
          for (const { points, part } of flatPaths(scene))
            if (!isClear(grownBox(box, 1.5), chordsOf([points]))) throw new Error(part);
      }
    });

    it('have a grainline on every piece', () => {
      for (const scene of scenes) {
        const withPart = (part: string): ReadonlySet<string | undefined> =>
          new Set(
            flatPaths(scene)
              .filter((path) => path.part === part)
              .map(({ within }) => within.at(-1)),
          );
        expect(withPart('grainline')).toEqual(withPart(lines === 'net' ? 'outline' : 'cut-line'));
      }
    });

    it('draw what was asked for', () => {
      for (const scene of scenes) {
        const parts = new Set(flatPaths(scene).map(({ part }) => part));
        expect(parts.has('outline')).toBe(lines !== 'cut');
        expect(parts.has('cut-line')).toBe(lines !== 'net');
        // What is matched in sewing is marked on whatever line is drawn.
        expect(parts.has('notch')).toBe(true);
        expect(parts.has('drill-hole')).toBe(true);
        expect(parts.has('dart')).toBe(lines === 'cut');
        expect(parts.has('zip-allowance')).toBe(lines === 'net');
        // Along a sewing line they are still to be added.
        const said = flatTexts(scene).map(({ text }) => text.words);
        expect(said.some((words) => words.includes('SEAM ALLOWANCES INCLUDED'))).toBe(
          lines !== 'net',
        );
        expect(said.some((words) => words.includes('ADD SEAM ALLOWANCES'))).toBe(lines === 'net');
      }
    });
  });

  it.each(['2', '24'])('say on every piece, inside it, what it is; size %s', (label) => {
    const scene = sizeSheet(drawingOf(result(style, set)), label);
    const words = flatTexts(scene);
    const outlines = flatPaths(scene).filter(({ part }) => part === 'cut-line');
    const pieces = new Set(outlines.map(({ within }) => within.at(-1)));
    for (const piece of pieces) {
      const own = words.filter(({ within }) => within.at(-1) === piece);
      const cut = outlines
        .filter(({ within }) => within.at(-1) === piece)
        .flatMap(({ points }) => points.slice(1));
      const told = own.map(({ text }) => text.words).join('\n');
      expect(told).toMatch(/Piece \d/);
      expect(told).toMatch(/SEAM ALLOWANCES INCLUDED/);
      expect(told).toMatch(/Cut \d/);
      expect(told).toContain(`Size ${label}`);
      for (const { box, text } of own) {
        const corners = [
          { x: box.left, y: box.top },
          { x: box.right, y: box.top },
          { x: box.left, y: box.bottom },
          { x: box.right, y: box.bottom },
        ];
        if (!corners.every((p) => isWithin(p, cut)))
          throw new Error(`${text.words} reaches out of ${piece ?? ''}`);
      }
    }
  });
});

describe('lines of a sheet', () => {
  it('are strong and unbroken to cut along, thin and dashed to sew along', () => {
    const drawing = drawingOf(result('pencil'));
    for (const label of ['12', '18']) {
      const root = readSvg(svg(sizeSheet(drawing, label)));
      const [cut] = having(root, 'data-part', 'cut-line');
      const [net] = having(root, 'data-part', 'outline');
      expect(get(cut, 'stroke-dasharray')).toBe('');
      expect(get(net, 'stroke-dasharray')).not.toBe('');
      expect(Number(get(cut, 'stroke-width'))).toBeGreaterThan(
        2 * Number(get(net, 'stroke-width')),
      );
    }
  });

  it('are told apart in a nest where one lies on the other: sewn ones unbroken and thin', () => {
    const drawing = drawingOf(result('pencil'));
    const root = readSvg(svg(nestSheet(drawing)));
    for (const net of having(root, 'data-part', 'outline')) {
      expect(get(net, 'stroke-dasharray')).toBe('');
      for (const cut of having(root, 'data-part', 'cut-line'))
        expect(Number(get(cut, 'stroke-width'))).toBeGreaterThan(
          3 * Number(get(net, 'stroke-width')),
        );
    }
    // Each size but the base is dashed where it is cut, so that a hairline in the gaps is not its own.
    const dashed = having(root, 'data-part', 'cut-line').filter(
      (cut) => get(cut, 'stroke-dasharray') !== '',
    );
    const pieces = having(root, 'data-part', 'cut-line').length / drawing.sizes.length;
    expect(dashed).toHaveLength((drawing.sizes.length - 1) * pieces);
    const samples = having(root, 'data-part', 'sample');
    expect(samples).toHaveLength(drawing.sizes.length + 1);
    expect(get(samples.at(-1), 'stroke-width')).toBe(
      get(having(root, 'data-part', 'outline')[0], 'stroke-width'),
    );
    expect(all(root).map(({ text }) => text)).toContain('sewing line');
  });

  it('are told apart in a sentence', () => {
    const words = (lines?: LinesShown): string =>
      all(readSvg(svg(nestSheet(drawingOf(result('pencil', {}, lines))))))
        .map(({ text }) => text)
        .join('\n');
    expect(words()).toContain('Cut along the strong lines, sew along the thin unbroken ones');
    expect(words('cut')).not.toContain('sewing line');
    expect(words('net')).not.toContain('sewing line');
    expect(words('cut')).toContain('Sewing lines are not drawn.');
    expect(words('net')).toContain('Net lines: seam allowances are not included');
  });

  it('list the allowances, widest seams together, and none as none', () => {
    const texts = all(
      readSvg(svg(sizeSheet(drawingOf(result('pencil', { hem_allowance: '0 in' })), '12'))),
    ).map(({ text }) => text);
    expect(texts).toContain('5/8 in (1.5 cm): waist, side');
    expect(texts).toContain('none: hem');
    expect(texts).toContain('1 in (2.5 cm): center back');
  });

  it.each(['pencil', 'shared-pencil', 'shared-drop'])(
    'have no zip allowance to be added where it is drawn: %s',
    (style) => {
      const scene = sizeSheet(drawingOf(result(style, {}, 'net')), '12');
      const said = (piece: string): readonly string[] =>
        flatTexts(scene)
          .filter(({ within }) => within.at(-1) === piece)
          .map(({ text }) => text.words);
      const back = said('back');
      expect(back.some((words) => words.startsWith('ZIP ALLOWANCE'))).toBe(true);
      const about = back.filter((words) => words.includes('center back'));
      expect(about.map((words) => words.replace(/, slit/, ''))).toEqual([
        'drawn, add none: center back',
      ]);
      // On the lining nothing is drawn beyond the seam.
      for (const words of said('back_lining'))
        if (words.includes('center back')) expect(words).toMatch(/^[35]\/[48] in \([12.5]+ cm\): /);
    },
  );

  it('speak of a zip allowance only where one is drawn', () => {
    const said = (set: Readonly<Record<string, string>>): string =>
      flatTexts(sizeSheet(drawingOf(result('pencil', set, 'net')), '12'))
        .map(({ text }) => text.words)
        .join('\n');
    expect(said({})).toContain('except the zip allowance');
    expect(said({ zip_allowance: '0 in' })).not.toMatch(/zip allowance/i);
  });
});
