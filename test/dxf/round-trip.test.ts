import { describe, expect, it } from 'vitest';
import { dxfFiles } from '../../src/files/dxf-files';
import { readDxf } from '../../src/dxf/read';
import { readRuleTable } from '../../src/dxf/rule-table';
import { pointBounds } from '../../src/geometry/bounds';
import type { Box } from '../../src/geometry/bounds';
import { distanceToSegment } from '../../src/geometry/nearest';
import type { Point } from '../../src/geometry/point';
import { distance } from '../../src/geometry/point';
import type { Segment } from '../../src/geometry/segment';
import { segmentAt } from '../../src/geometry/segment';
import type { GradeResult } from '../../src/jobs/grade-result';
import { gradePattern } from '../../src/jobs/grade-pattern';
import type { SizedPattern } from '../../src/grade/graded-pattern';
import type { CutPiece } from '../../src/pattern/cut-piece';
import type { Piece } from '../../src/pattern/piece';
import { outlineSegments, pointOf } from '../../src/pattern/piece';
import { cuttings } from '../../src/render/captions';
import type { ResultFile } from '../../src/files/result-file';
import { EXCHANGED } from '../../src/tolerance';
import { expectRefusal } from '../expect-refusal';
import { graded } from '../given/sheets';
import { BODICE, STEPS } from '../seams/bodice';
import { chartText } from '../skirts';
import { cutOf } from '../pattern/cut-of';
import { gradeLazily } from '../graded';
import { some } from '../samples';
import { STYLE_NAMES } from '../styles';

const CHART = chartText(
  'in',
  {
    waist_girth: ['26', '28', '31'],
    hip_girth: ['36', '38', '41'],
    waist_to_hip: ['8', '8', '8 1/8'],
  },
  ['8', '10', '14'],
);

function textOf(files: readonly ResultFile[], name: string): string {
  return files.find((file) => file.name === name)?.text ?? '';
}

function readResult(files: readonly ResultFile[]): GradeResult {
  return gradePattern({
    pattern: { text: textOf(files, 'pattern.dxf'), file: 'pattern.dxf' },
    rules: { text: textOf(files, 'pattern.rul'), file: 'pattern.rul' },
  });
}

function readBack(files: readonly ResultFile[]): readonly SizedPattern[] {
  return readResult(files).range.sizes;
}

interface Exchanged {
  readonly result: GradeResult;
  readonly read: GradeResult;
}

const known = new Map<string, Exchanged>();

/** A style graded from the chart, and what comes back out of its files. */
function exchanged(style: string, set: Readonly<Record<string, string>> = {}) {
  const key = JSON.stringify([style, set]);
  const made = known.get(key);
  if (made !== undefined) return made;
  const result = gradeLazily({ chart: CHART, base: '10', style, set });
  const fresh = { result, read: readResult(dxfFiles(result).files) };
  known.set(key, fresh);
  return fresh;
}

/** A segment with the box around its controls. */
type Boxed = readonly [segment: Segment, box: Box];

function boxed(segments: readonly Segment[]): readonly Boxed[] {
  return segments.map((segment) => [segment, pointBounds(controls(segment))]);
}

/** mm from a point to the nearest of some segments; those in boxes farther away are passed over. */
function away(p: Point, segments: readonly Boxed[]): number {
  // No farther than the nearest end, by which most segments are passed over.
  let least = Math.min(...segments.map(([{ from }]) => Math.hypot(from.x - p.x, from.y - p.y)));
  for (const [segment, { left, right, top, bottom }] of segments) {
    const aside = Math.max(left - p.x, p.x - right, top - p.y, p.y - bottom);
    if (aside < least) least = Math.min(least, distanceToSegment(segment, p));
  }
  return least;
}

function controls(segment: Segment): readonly Point[] {
  const { from, to } = segment;
  return segment.kind === 'cubic' ? [from, segment.leave, segment.arrive, to] : [from, to];
}

/** The farthest that any place of one closed line lies from another. */
function linesApart(one: readonly Segment[], other: readonly Segment[]): number {
  const places = one.flatMap((segment) => [0, 0.25, 0.5, 0.75].map((t) => segmentAt(segment, t)));
  const to = boxed(other);
  return Math.max(...places.map((p) => away(p, to)));
}

/** The farthest that any place on the outlines of one nest lies from those of the other. */
function apart(one: readonly SizedPattern[], other: readonly SizedPattern[]): number {
  let worst = 0;
  one.forEach(({ pieces }, size) => {
    pieces.forEach((piece, p) => {
      const counterpart = other[size]?.pieces[p];
      if (counterpart === undefined) throw new Error('a piece is missing');
      const outline = boxed(outlineSegments(counterpart));
      for (const segment of outlineSegments(piece)) {
        for (const t of [0, 0.1, 0.25, 0.5, 0.75, 0.9, 1])
          worst = Math.max(worst, away(segmentAt(segment, t), outline));
      }
    });
  });
  return worst;
}

describe('a pattern for exchange', () => {
  it.each(some(STYLE_NAMES))('brings the nest of %s back', (style) => {
    const { result, read } = exchanged(style);
    const back = read.range.sizes;
    expect(back.map(({ label }) => label)).toEqual(['8', '10', '14']);
    expect(apart(result.range.sizes, back)).toBeLessThanOrEqual(EXCHANGED);
    expect(apart(back, result.range.sizes)).toBeLessThanOrEqual(EXCHANGED);
  });

  it.each([
    ...some(STYLE_NAMES).map((style) => [style, {}]),
    ['shared-pencil', { waist_finish: '2', corner_style: '1' }],
    ['shared-pencil', { waist_finish: '0', vent_width: '0', corner_style: '2' }],
  ] as readonly (readonly [string, Readonly<Record<string, string>>])[])(
    'brings every feature of %s with %o back in every size',
    (style, set) => {
      const { result, read } = exchanged(style, set);
      const { findings } = read;
      // Nothing of it is left out or doubted.
      const doubts = [
        ...['left-out', 'rule-beside', 'notch-beside', 'gap-closed', 'placed'],
        ...['cut-unruled', 'nest', 'unit-doubt'],
      ];
      expect(findings.filter(({ check }) => doubts.includes(check))).toEqual([]);
      result.range.sizes.forEach(({ pieces, parameters }, size) => {
        cutOf({ pieces, parameters }).forEach((own, p) => {
          const piece = read.range.sizes[size]?.pieces[p];
          const back = read.range.sizes[size]?.cutPieces?.[p];
          if (piece === undefined || back === undefined) throw new Error('a piece is missing');
          const closely = (found: readonly Point[], wanted: readonly Point[]): void => {
            expect(found).toHaveLength(wanted.length);
            wanted.forEach((at, i) =>
              expect(distance(at, found[i] ?? { x: NaN, y: NaN })).toBeLessThanOrEqual(EXCHANGED),
            );
          };
          expect(linesApart(own.cut, back.cut)).toBeLessThanOrEqual(EXCHANGED);
          expect(linesApart(back.cut, own.cut)).toBeLessThanOrEqual(EXCHANGED);
          closely(
            back.notches.map(({ cut }) => cut),
            own.notches.map(({ cut }) => cut),
          );
          // On the sewing line alike, though a corner may be nearer than where a notch is for.
          closely(
            back.notches.map(({ net }) => net),
            own.notches.map(({ net }) => net),
          );
          expect(back.notches.map(({ marks }) => marks)).toEqual(
            own.notches.map(({ marks }) => marks),
          );
          closely(back.drillHoles, own.drillHoles);
          closely([back.grain.from, back.grain.to], [own.grain.from, own.grain.to]);
          const ends = ({ fold }: CutPiece): readonly Point[] =>
            fold === undefined ? [] : [fold.from, fold.to].toSorted((a, b) => a.y - b.y);
          closely(ends(back), ends(own));
          const inside = (of: Piece) =>
            of.plan.marks
              .filter(({ name }) => name !== 'grainline')
              .map(({ through }) => through.map((name) => pointOf(of, name)));
          const wanted = inside(own.piece);
          expect(inside(piece)).toHaveLength(wanted.length);
          inside(piece).forEach((line, i) => closely(line, wanted[i] ?? []));
          expect(piece.plan.darts).toHaveLength(own.piece.plan.darts.length);
          // With the side of the cloth that is up, which a drafted piece has by its part.
          expect(cuttings(piece.plan)).toEqual(cuttings(own.piece.plan));
          expect(new Set(piece.plan.outline.map(({ seam }) => seam))).toEqual(
            new Set(own.piece.plan.outline.map(({ seam }) => seam)),
          );
        });
      });
    },
  );

  it('walks the seams of a skirt that came back as they were', () => {
    const { result, read } = exchanged('shared-pencil');
    const { seams, range } = read;
    expect(seams.map(({ pair }) => pair.name)).toEqual([
      'front.side to back.side',
      'front_lining.side to right_back_lining.side',
      'front_lining.side to left_back_lining.side',
      'waistband.inside_edge to waistband.waist + waistband.underlap',
      'front.waist to front_lining.waist',
      ...['right', 'left'].flatMap((half) =>
        ['waist', 'center_back', 'vent_top', 'vent'].map(
          (edge) => `back.${edge} to ${half}_back_lining.${edge}`,
        ),
      ),
    ]);
    range.sizes.forEach(({ label }, i) => {
      const walk = seams[0]?.walks[i];
      expect(Math.abs(walk?.gap ?? NaN)).toBeLessThanOrEqual(EXCHANGED);
      const own = result.range.sizes.find((size) => size.label === label);
      const side = own?.measures.find(({ name }) => name === 'side_seam_front')?.value ?? NaN;
      expect(walk?.walks[0].length).toBeCloseTo(side, 1);
      for (const sum of walk?.angleSums ?? []) expect(sum).toBeCloseTo(180, 0);
    });
  });

  it('walks it from notch to notch as the draft was, and finds no notch that meets nothing', () => {
    const { result, read: back } = exchanged('shared-pencil');
    const { seams, range, findings } = back;
    const stretchesOf = (of: typeof seams, name: string, size: number) =>
      of.find(({ pair }) => pair.name === name)?.walks[size]?.stretches ?? [];
    for (const [read, drafted] of [
      ['front.side to back.side', 'side'],
      ['front_lining.side to right_back_lining.side', 'right lining side'],
      ['front_lining.side to left_back_lining.side', 'left lining side'],
    ] as const)
      range.sizes.forEach((_, size) => {
        const wanted = stretchesOf(result.seams, drafted, size);
        const found = stretchesOf(seams, read, size);
        // From the waist to the hip line, and on to the hem.
        expect(wanted).toHaveLength(2);
        expect(found).toHaveLength(2);
        found.forEach(({ lengths: [front, back] }, i) => {
          expect(Math.abs(front - (wanted[i]?.lengths[0] ?? NaN))).toBeLessThan(2 * EXCHANGED);
          expect(Math.abs(back - (wanted[i]?.lengths[1] ?? NaN))).toBeLessThan(2 * EXCHANGED);
        });
      });
    expect(findings.filter(({ check }) => check === 'notches-match')).toEqual([]);
    expect(findings.filter(({ check }) => check === 'notch-to-notch')).toHaveLength(3 * 3);
  });

  it('keeps pairs with ease over several edges, whichever way they run', () => {
    const seams = 'edge,sewn_to,ease\nfront.side,back.side + back.waist,-20 cm\n';
    const result = graded(BODICE, STEPS, { seams: { text: seams, file: 'seams.csv' } });
    const back = readResult(dxfFiles(result).files);
    expect(back.seams).toHaveLength(3);
    back.seams.forEach(({ pair, way, walks }, i) => {
      const own = result.seams[i];
      expect(pair.sides).toEqual(own?.pair.sides);
      expect(pair.ease).toBeCloseTo(own?.walks[0]?.ease ?? NaN, 4);
      expect(way).toBe(own?.way);
      walks.forEach(({ gap }, size) => expect(gap).toBeCloseTo(own?.walks[size]?.gap ?? NaN, 2));
    });
  });

  it('counts moves along the grade reference line, which comes back with them', () => {
    // The same moves in the axes of a line at 30 degrees.
    const withLine = BODICE.replace(
      'back,neck_center',
      'front,r1,0,20,reference,,,,\nfront,r2,17.320508,30,reference,,,,\nback,neck_center',
    );
    const result = graded(withLine, STEPS);
    const files = dxfFiles(result).files;
    const entities = readDxf(textOf(files, 'pattern.dxf'), 'a.dxf').blocks[0]?.entities ?? [];
    const [line] = entities.filter(({ layer, type }) => layer === '5' && type === 'LINE');
    const [from, to] = line?.points ?? [];
    expect(((to?.y ?? 0) - (from?.y ?? 0)) / ((to?.x ?? 0) - (from?.x ?? 0))).toBeCloseTo(
      Math.tan(Math.PI / 6),
      4,
    );
    // The side moves a step of (1, 0.4) cm along and square to the line, as the sheet says.
    const { rules } = readRuleTable(textOf(files, 'pattern.rul'), 'a.rul');
    const large = [...rules.values()].map((moves) => moves[3]);
    expect(large.some((move) => move && distance(move, { x: 10, y: 4 }) < 1e-3)).toBe(true);
    expect(apart(result.range.sizes, readBack(files))).toBeLessThanOrEqual(EXCHANGED);
  });

  it('brings allowances of a given pattern back as its cut line', () => {
    const pattern = BODICE.replace('# unit: cm', '# unit: cm\n# allowance: 1.5');
    const result = graded(pattern, STEPS);
    const back = readBack(dxfFiles(result).files);
    result.range.sizes.forEach(({ cutPieces: own = [] }, size) => {
      expect(own).toHaveLength(2);
      own.forEach(({ cut, notches }, p) => {
        const read = back[size]?.cutPieces?.[p];
        expect(linesApart(cut, read?.cut ?? [])).toBeLessThanOrEqual(EXCHANGED);
        expect(linesApart(read?.cut ?? [], cut)).toBeLessThanOrEqual(EXCHANGED);
        expect(read?.notches).toHaveLength(notches.length);
      });
    });
  });

  it('brings a bodice back with its curves through points, notches and folds', () => {
    const result = graded(BODICE, STEPS);
    const files = dxfFiles(result).files;
    const back = readBack(files);
    expect(apart(result.range.sizes, back)).toBeLessThanOrEqual(1e-3);
    expect(back[0]?.pieces.map(({ plan }) => plan.notches?.length)).toEqual([2, 1]);
    expect(
      back[0]?.pieces.map(({ plan }) => plan.outline.filter(({ kind }) => kind === 'fold').length),
    ).toEqual([1, 1]);
    expect(back[0]?.pieces[0]?.plan.cuttings).toEqual([{ cloth: 'shell', count: 1, onFold: true }]);
  });

  it('of a pocket comes back without doubt of its unit', () => {
    const pocket =
      '# unit: cm\n# base: M\npiece,point,x,y\npocket,a,0,0\n,b,14,0\n,c,14,16\n,d,0,16\n';
    const steps =
      '# unit: cm\npiece,point,size,dx,dy\npocket,b,S,-1,0\npocket,b,M,0,0\npocket,b,L,1,0\n';
    const { findings } = readResult(dxfFiles(graded(pocket, steps)).files);
    expect(findings.map(({ check }) => check)).not.toContain('unit-doubt');
  });

  it('is the same every time', () => {
    const result = graded(BODICE, STEPS);
    const texts = (files: readonly ResultFile[]) => files.map(({ name, text }) => [name, text]);
    expect(texts(dxfFiles(result).files)).toEqual(texts(dxfFiles(graded(BODICE, STEPS)).files));
  });

  it('has one layer a size in the nested drawing', () => {
    const { entities } = readDxf(
      textOf(dxfFiles(graded(BODICE, STEPS)).files, 'nest.dxf'),
      'nest.dxf',
    );
    const outlines = entities.filter(({ type, closed }) => type === 'POLYLINE' && closed);
    expect(outlines.map(({ layer }) => layer)).toEqual(
      ['XS', 'S', 'M', 'L', 'XL'].flatMap((size) => [`SIZE_${size}`, `SIZE_${size}`]),
    );
  });
});

describe('a drawing that cannot be read', () => {
  const files = dxfFiles(graded(BODICE, STEPS)).files;
  const drawing = textOf(files, 'pattern.dxf');
  const table = textOf(files, 'pattern.rul');
  const read =
    (dxf: string, rul = table) =>
    () =>
      gradePattern({ pattern: { text: dxf, file: 'a.dxf' }, rules: { text: rul, file: 'a.rul' } });

  /** The row of the code 0 before the last such entity that the words are in or stand after. */
  const startOf = (entity: string, dxf: string, words: string): number => {
    const rows = dxf.split('\n');
    const at = rows.findIndex((row) => row.includes(words));
    return rows.lastIndexOf(entity, at);
  };

  it('is cut off', () => {
    const lines = drawing.split('\n').slice(0, 101);
    expectRefusal(read(lines.join('\n')), 'dxf-malformed', { file: 'a.dxf', row: 101 });
  });

  it('is no DXF', () => {
    expectRefusal(read('piece,point\nfront,a\n'), 'dxf-malformed', { file: 'a.dxf', row: 1 });
  });

  it('has no blocks', () => {
    expectRefusal(read('0\nSECTION\n2\nENTITIES\n0\nENDSEC\n0\nEOF\n'), 'dxf-malformed', {
      file: 'a.dxf',
    });
  });

  it('uses a rule that the table does not have', () => {
    const fewer = table.replace(/RULE: DELTA 3\n(?:.*,.*\n)+/u, '');
    expectRefusal(read(drawing, fewer), 'rule-unknown', {
      file: 'a.dxf',
      row: startOf('TEXT', drawing, '# 3'),
    });
  });

  it.each([
    ['a sample size that is no size', table.replace('SAMPLE SIZE: M', 'SAMPLE SIZE: Q'), 5],
    ['an unknown unit', table.replace('METRIC', 'ELLS'), 2],
    ['no list of sizes', table.replace('SIZE LIST', 'SIZES'), 1],
    ['a size twice', table.replace('LIST: XS S', 'LIST: S S'), 4],
    ['another number of sizes', table.replace('SIZES: 5', 'SIZES: 6'), 3],
    ['a rule twice', table.replace('DELTA 2\n', 'DELTA 1\n'), 12],
    ['a rule that moves the base', table.replace(/(DELTA 1\n(.*\n){2}).*\n/u, '$11, 0\n'), 6],
    ['a line that is no move', table.replace(/DELTA 1\n.*\n/u, 'DELTA 1\na, b\n'), 7],
    ['a move too few', table.replace('0, 0\n', ''), 6],
  ])('comes with %s', (_, rul, row) => {
    expectRefusal(read(drawing, rul), 'rule-table-malformed', { file: 'a.rul', row });
  });

  it('has a coordinate that is no number', () => {
    const broken = drawing.replace(/(VERTEX\n8\n1\n10\n).*\n/u, '$1x\n');
    const row = broken.split('\n').indexOf('x') + 1;
    expectRefusal(read(broken), 'dxf-malformed', { file: 'a.dxf', row });
  });

  it('tells of an edge that is not there', () => {
    const broken = drawing.replace('SEWN: front.', 'SEWN: frnot.');
    const row = startOf('TEXT', broken, 'frnot');
    expectRefusal(read(broken), 'edge-unknown', { file: 'a.dxf', row });
  });

  it('is asked for with a base or a chart of its own', () => {
    const pattern = { text: drawing, file: 'a.dxf' };
    const rules = { text: table, file: 'a.rul' };
    expectRefusal(() => gradePattern({ pattern, rules, base: 'L' }), 'bad-option', {
      field: 'base',
    });
    const chart = { text: CHART, file: 'chart.csv' };
    expectRefusal(() => gradePattern({ pattern, rules, chart }), 'bad-option', {
      field: 'chart',
    });
  });

  it('counts inches where the table says so', () => {
    const english = readRuleTable(
      table.replace('METRIC', 'ENGLISH').replace(/DELTA 1\n.*\n/u, 'DELTA 1\n1, -1\n'),
      'a.rul',
    );
    expect(english.rules.get(1)?.[0]).toEqual({ x: 25.4, y: 25.4 });
  });
});

describe('a cut line that has other corners in some sizes', () => {
  // Deep allowances fold back where the waist bends up to the side, in the sizes that bend most.
  const deep = chartText(
    'in',
    { waist_girth: ['22', '22', '22'], hip_girth: ['28.44', '33', '36.56'] },
    ['1', '3', '6'],
  );
  const findingsOf = (waist_allowance: string) => {
    const set = { waist_allowance, side_allowance: '2 cm', side_rise: '4 cm' };
    const { files, findings } = dxfFiles(
      gradeLazily({ chart: deep, base: '1', style: 'shared-drop', set }),
    );
    return { files, findings: findings.filter(({ check }) => check === 'exchange') };
  };

  it('is left out, and the findings say so', () => {
    const { files, findings } = findingsOf('6 cm');
    const told = findings.map(({ piece, severity }) => `${severity} ${piece}`);
    expect(told).toContain('warning back');
    expect(textOf(files, 'pattern.dxf').split('NET LINE, WITHOUT ALLOWANCES')).toHaveLength(
      told.length + 1,
    );
  });

  it('is no matter at usual widths', () => {
    expect(findingsOf('5/8 in').findings).toEqual([]);
  });
});

describe('seams that words in the file cannot say', () => {
  it('are named with the reason, and those that are said come back', () => {
    const { result, read } = exchanged('shared-pencil');
    const { findings } = dxfFiles(result);
    const notes = findings.filter(({ check }) => check === 'exchange-seams');
    expect(notes.map(({ severity, subject }) => `${severity} ${subject}`)).toEqual([
      'note center front, center back',
      'note waist and band',
    ]);
    expect(notes[0]?.message).toContain('meets its own image');
    expect(notes[1]?.message).toContain('the other half of the garment');
    const unsaid = notes.flatMap(({ subject }) => subject.split(', '));
    expect(read.seams).toHaveLength(result.seams.length - unsaid.length);
  });

  it('are none of a pattern whose seams all join two pieces', () => {
    expect(dxfFiles(graded(BODICE, STEPS)).findings).toEqual([]);
  });
});
