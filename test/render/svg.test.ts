import { describe, expect, it } from 'vitest';
import { point } from '../../src/geometry/point';
import { nestSheet } from '../../src/render/nest-sheet';
import type { Scene } from '../../src/render/scene';
import { circle, polyline, rectangle } from '../../src/render/scene';
import { sizeIds } from '../../src/render/size-id';
import { svg } from '../../src/render/svg';
import { text, textBox, textWidth, wrapped } from '../../src/render/type';
import { drawingOf, even } from './fixture';
import { all, get, having, pathPoints, readSvg } from './read-svg';

const STROKE = { color: '#000000', width: 0.5 };

function sceneOf(shapes: Scene['shapes'], title = 'test'): Scene {
  return { title, width: 100, height: 50.5, shapes };
}

describe('writing', () => {
  it('escapes words and attributes', () => {
    const odd = `<b> & "quoted" 'single'\t\u0007 \ud800 \u4e2d\u6587 \ud83d\ude00 ]]>`;
    const seen = odd.replace('\u0007', '\ufffd').replace(/\ud800(?= )/, '\ufffd');
    const root = readSvg(
      svg(
        sceneOf(
          [
            { kind: 'group', layer: odd, data: { size: odd }, children: [] },
            text(odd, point(0, 0), 5),
          ],
          odd,
        ),
      ),
    );
    const words = all(root).filter(({ name }) => name === 'text' || name === 'title');
    expect(words.map((element) => element.text)).toEqual([seen, seen]);
    const [group] = all(root).filter(({ name }) => name === 'g');
    expect(get(group, 'data-size')).toBe(seen);
    expect(get(group, 'data-layer')).toBe(seen);
  });

  it('rounds to a thousandth of a millimeter and writes no negative zero', () => {
    const root = readSvg(svg(sceneOf([polyline('p', [point(-1e-9, 1 / 3), point(2, 3)], STROKE)])));
    expect(get(having(root, 'data-part', 'p')[0], 'd')).toBe('M0 0.333L2 3');
  });

  it('lifts the pen between segments that do not meet, and closes a loop once', () => {
    const apart = {
      kind: 'path' as const,
      part: 'apart',
      closed: false,
      segments: [
        { kind: 'line' as const, from: point(0, 0), to: point(1, 0) },
        { kind: 'line' as const, from: point(2, 0), to: point(3, 0) },
      ],
    };
    const box = rectangle('box', { left: 0, top: 0, right: 2, bottom: 1 }, STROKE);
    const root = readSvg(svg(sceneOf([apart, box, circle('ring', point(5, 5), 2, STROKE)])));
    expect(get(having(root, 'data-part', 'apart')[0], 'd')).toBe('M0 0L1 0M2 0L3 0');
    expect(get(having(root, 'data-part', 'box')[0], 'd')).toBe('M0 0L2 0L2 1L0 1Z');
    const ring = pathPoints(having(root, 'data-part', 'ring')[0]).filter((_, i) => i % 3 === 0);
    for (const [x, y] of ring) expect(Math.hypot(x - 5, y - 5)).toBeCloseTo(2, 3);
  });
});

describe('identifiers of sizes', () => {
  it('are safe and unique whatever the labels', () => {
    const labels = [
      '14W (US)',
      '14W/US',
      '14W-US-',
      '8',
      '\u4e2d',
      '\u5927',
      '',
      ' ',
      'a-2',
      'a',
      'a ',
      'a+',
    ];
    const ids = sizeIds(labels);
    expect(new Set(ids).size).toBe(labels.length);
    for (const id of ids) expect(id).toMatch(/^size-[A-Za-z0-9_-]+$/);
    expect(ids[3]).toBe('size-8');
    expect(ids[9]).toBe('size-a');
    expect(ids[8]).toBe('size-a-2');
  });

  it('stay unique on a sheet, with the labels themselves kept', () => {
    const odd = ['6/8', '6 8', '6&8', '<6>', 'XS "petite"', '\u00fc\u00df'];
    const drawing = drawingOf(even(odd.length, 1, (i) => odd[i] ?? ''));
    const root = readSvg(svg(nestSheet(drawing)));
    const sizes = all(root).filter((element) => element.attributes.has('data-size'));
    expect(sizes.map((size) => get(size, 'data-size')).toSorted()).toEqual(odd.toSorted());
    expect(new Set(sizes.map((size) => get(size, 'id'))).size).toBe(odd.length);
  });
});

describe('room for words', () => {
  it('is never less than the widest common faces need', () => {
    // Advance widths in em of bold letters in a wide face, as published in its metrics.
    const wide: Record<string, number> = {
      W: 1.103,
      m: 1.042,
      O: 0.85,
      A: 0.774,
      e: 0.678,
      8: 0.696,
    };
    for (const [character, em] of Object.entries(wide)) {
      expect(textWidth(character, 10)).toBeGreaterThanOrEqual(em * 10);
    }
  });

  it('turns with the words', () => {
    const level = textBox(text('words', point(10, 20), 10));
    const turned = textBox(text('words', point(10, 20), 10, { rotation: -90 }));
    expect(turned.bottom - turned.top).toBeCloseTo(level.right - level.left, 9);
    expect(turned.bottom).toBeCloseTo(20, 9);
    expect(turned.right).toBeCloseTo(10 + 2.4, 9);
  });

  it('breaks lines between words, and a word that is too long anywhere', () => {
    expect(wrapped('one two three', 10, 60)).toEqual(['one two', 'three']);
    const cut = wrapped('x'.repeat(40), 10, 60);
    expect(cut.length).toBeGreaterThan(1);
    expect(cut.join('')).toBe('x'.repeat(40));
    for (const line of cut) expect(textWidth(line, 10)).toBeLessThanOrEqual(60);
  });
});
