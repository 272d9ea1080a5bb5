/** DXF files read, audited and written by ezdxf (Debian's python3-ezdxf). */
import { spawnSync } from 'node:child_process';
import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { dxfFiles } from '../../src/files/dxf-files';
import { gradePattern } from '../../src/jobs/grade-pattern';
import { segmentsBounds } from '../../src/geometry/bounds';
import { distanceToSegment } from '../../src/geometry/nearest';
import type { Point } from '../../src/geometry/point';
import { outlineSegments, pieceNamed } from '../../src/pattern/piece';
import { gradeChart } from '../../src/jobs/grade-chart';
import type { ResultFile } from '../../src/files/result-file';
import { graded } from '../given/sheets';
import { BODICE, STEPS } from '../seams/bodice';
import { chartText } from '../skirts';
import { CURVE_POINTS, EXCHANGED } from '../../src/tolerance';
import { folder } from './tools';

/** Debian's own Python has the module; another one may come first on the path. */
const PYTHON = ['/usr/bin/python3', 'python3'].find(
  (program) => spawnSync(program, ['-c', 'import ezdxf']).status === 0,
);

function describeDxf(name: string, tests: () => void): void {
  if (PYTHON === undefined)
    console.log(`skipped: ${name}, for want of ezdxf (package python3-ezdxf)`);
  describe.skipIf(PYTHON === undefined)(name, tests);
}

function python(script: string, ...args: readonly string[]): string {
  const { status, stdout, stderr } = spawnSync(PYTHON ?? '', ['-c', script, ...args], {
    encoding: 'utf8',
    maxBuffer: 1 << 28,
  });
  if (status !== 0) throw new Error(stderr);
  return stdout;
}

/** Audits a file and lists its layers, blocks and the vertices of its polylines. */
const READ = `
import sys, json, ezdxf
d = ezdxf.readfile(sys.argv[1])
errors = [e.message for e in d.audit().errors]
def lines(space):
    return [{'layer': e.dxf.layer, 'type': e.dxf.linetype, 'closed': e.is_closed, 'points': [list(v.dxf.location)[:2] for v in e.vertices]} for e in space.query('POLYLINE')]
print(json.dumps({
    'errors': errors,
    'layers': [l.dxf.name for l in d.layers],
    'blocks': {b.name: {'lines': lines(b), 'spots': [[e.dxf.layer, *list(e.dxf.location)[:2]] for e in b.query('POINT')], 'straight': [e.dxf.layer for e in b.query('LINE')], 'words': [t.dxf.text for t in b.query('TEXT')]} for b in d.blocks if not b.name.startswith('*')},
    'lines': lines(d.modelspace()),
    'strokes': [[e.dxf.layer, list(e.dxf.start)[:2], list(e.dxf.end)[:2]] for e in d.modelspace().query('LINE')],
    'inserts': [e.dxf.name for e in d.modelspace().query('INSERT')],
}))
`;

interface Line {
  readonly layer: string;
  readonly type: string;
  readonly closed: boolean;
  readonly points: readonly (readonly [number, number])[];
}
interface Drawing {
  readonly errors: readonly string[];
  readonly layers: readonly string[];
  readonly blocks: Readonly<
    Record<
      string,
      {
        readonly lines: readonly Line[];
        readonly spots: readonly (readonly [string, number, number])[];
        readonly straight: readonly string[];
        readonly words: readonly string[];
      }
    >
  >;
  readonly lines: readonly Line[];
  readonly strokes: readonly (readonly [string, unknown, unknown])[];
  readonly inserts: readonly string[];
}

describeDxf('DXF files as ezdxf reads them', () => {
  const path = folder();
  const opened = (files: readonly ResultFile[], name: string): Drawing => {
    const file = join(path, name);
    writeFileSync(file, files.find((found) => found.name === name)?.text ?? '');
    return JSON.parse(python(READ, file)) as Drawing;
  };
  const chart = chartText(
    'in',
    { waist_girth: ['26', '28', '30'], hip_girth: ['36', '38', '40'] },
    ['S', 'M', 'L'],
  );

  it.each(['pencil', 'shared-pencil', 'shared-a-line'])('have no errors for %s', (style) => {
    const result = gradeChart({ chart, base: 'M', style });
    const files = dxfFiles(result).files;
    const exchange = opened(files, 'pattern.dxf');
    expect(exchange.errors).toEqual([]);
    const names = result.range.plans.map(({ name }) => name);
    expect(Object.keys(exchange.blocks)).toEqual(names);
    expect(exchange.inserts).toEqual(names);
    const nest = opened(files, 'nest.dxf');
    expect(nest.errors).toEqual([]);
    expect(nest.layers).toEqual(expect.arrayContaining(['SIZE_S', 'SIZE_M', 'SIZE_L']));
    for (const size of ['S', 'M', 'L']) {
      const closed = nest.lines.filter((line) => line.closed && line.layer === `SIZE_${size}`);
      // What is cut is drawn through, what is sewn is dashed.
      const cut = closed.filter(({ type }) => type !== 'DASHED');
      expect([cut.length, closed.length - cut.length]).toEqual([names.length, names.length]);
    }
  });

  it.each(['pencil', 'shared-pencil', 'shared-a-line'])('have every feature of %s', (style) => {
    const result = gradeChart({ chart, base: 'M', style });
    const size = result.range.sizes[1];
    const { blocks } = opened(dxfFiles(result).files, 'pattern.dxf');
    for (const own of cutOf({
      pieces: size?.pieces ?? [],
      parameters: size?.parameters ?? new Map(),
    })) {
      const block = blocks[own.piece.plan.name];
      const on = (layer: string): readonly (readonly [number, number])[] =>
        (block?.spots ?? []).filter(([name]) => name === layer).map(([, x, y]) => [x, y]);
      const places = (points: readonly Point[]) =>
        points.map(({ x, y }) => [expect.closeTo(x, 3), expect.closeTo(-y, 3)] as unknown);
      expect(on('4')).toEqual(places(own.notches.map(({ cut }) => cut)));
      expect(on('13')).toEqual(places(own.drillHoles));
      // Boundary and seam line, internal lines, grain and grade reference, mirror line.
      expect(block?.lines.filter(({ layer }) => layer === '1')).toHaveLength(1);
      expect(block?.lines.filter(({ layer }) => layer === '14')).toHaveLength(1);
      const inside = own.piece.plan.marks.filter(({ name }) => name !== 'grainline');
      expect(block?.lines.filter(({ layer }) => layer === '8')).toHaveLength(inside.length);
      expect(block?.straight.toSorted()).toEqual(own.fold ? ['5', '6', '7'] : ['5', '7']);
      const doubles = own.notches.filter(({ marks }) => marks === 2).length;
      expect(block?.words.filter((words) => words === 'DOUBLE NOTCH')).toHaveLength(doubles);
    }
  });

  it.each([
    ['net', 1, 0, 0],
    ['cut', 1, 0, 1],
    ['both', 1, 1, 1],
  ] as const)('show %s lines in the nest', (lines, strong, dashed, notched) => {
    const result = gradeChart({ chart, base: 'M', style: 'shared-pencil', lines });
    const nest = opened(dxfFiles(result).files, 'nest.dxf');
    const closed = nest.lines.filter((line) => line.closed && line.layer === 'SIZE_L');
    const pieces = result.range.plans.length;
    expect(closed.filter(({ type }) => type !== 'DASHED')).toHaveLength(strong * pieces);
    expect(closed.filter(({ type }) => type === 'DASHED')).toHaveLength(dashed * pieces);
    const size = result.range.sizes[2];
    const cut = cutOf({ pieces: size?.pieces ?? [], parameters: size?.parameters ?? new Map() });
    const strokes = cut.flatMap(({ notches }) => notches.map(({ marks }) => marks as number));
    const sum = strokes.reduce((all, marks) => all + marks, 0);
    expect(nest.strokes.filter(([layer]) => layer === 'SIZE_L')).toHaveLength(notched * sum);
    // The widest line of the front is as wide as its cut line, or as its net line.
    const front = cut[0];
    const wanted = segmentsBounds((lines === 'net' ? front?.net : front?.cut) ?? []);
    const xs = closed[0]?.points.map(([x]) => x) ?? [];
    expect(Math.max(...xs) - Math.min(...xs)).toBeCloseTo(wanted.right - wanted.left, 1);
  });

  it('have pieces on the fold whole where that is wished', () => {
    const result = gradeChart({ chart, base: 'M', style: 'shared-pencil', lines: 'cut' });
    const closed = (unfold: boolean) =>
      opened(dxfFiles(result, unfold).files, 'nest.dxf').lines.filter(
        (line) => line.closed && line.layer === 'SIZE_L',
      );
    // The shoelace formula, after Meister 1769.
    const areas = (lines: readonly Line[]): readonly number[] =>
      lines.map(({ points }) =>
        Math.abs(
          points.reduce((sum, [x, y], i) => {
            const [nextX, nextY] = points[(i + 1) % points.length] ?? [x, y];
            return sum + (x * nextY - nextX * y) / 2;
          }, 0),
        ),
      );
    const [half, whole] = [areas(closed(false)), areas(closed(true))];
    result.range.plans.forEach(({ outline }, p) => {
      const times = outline.some(({ kind }) => kind === 'fold') ? 2 : 1;
      expect((whole[p] ?? NaN) / (half[p] ?? NaN)).toBeCloseTo(times, 6);
    });
    expect(whole).toHaveLength(result.range.plans.length);
  });

  it('have the places of the base, y up', () => {
    const result = graded(BODICE, STEPS);
    const { blocks } = opened(dxfFiles(result).files, 'pattern.dxf');
    for (const [name, block] of Object.entries(blocks)) {
      const { plan, points } = pieceNamed(result.range.sizes[2]?.pieces ?? [], name);
      const expected = plan.outline.map(({ from }) => points[plan.index.get(from) ?? -1]);
      const [boundary] = block.lines.filter(({ layer }) => layer === '1');
      expect(boundary?.points).toHaveLength(expected.length);
      boundary?.points.forEach(([x, y], i) => {
        expect(x).toBeCloseTo(expected[i]?.x ?? NaN, 3);
        expect(-y).toBeCloseTo(expected[i]?.y ?? NaN, 3);
      });
      expect(block.words).toContain(`PIECE NAME: ${name}`);
    }
  });

  it('keep words that are not ASCII', () => {
    const pattern = BODICE.replaceAll('front,', 'd\u0155ape,');
    const files = dxfFiles(graded(pattern, STEPS.replaceAll('front', 'd\u0155ape'))).files;
    const { errors, blocks } = opened(files, 'pattern.dxf');
    expect(errors).toEqual([]);
    // This release of ezdxf leaves the code of a character as it is.
    const words = Object.values(blocks).flatMap((block) => block.words);
    expect(words).toContain('PIECE NAME: d\\U+0155ape');
    const text = (name: string): string => files.find((file) => file.name === name)?.text ?? '';
    const { pattern: back } = gradePattern({
      pattern: { text: text('pattern.dxf'), file: 'pattern.dxf' },
      rules: { text: text('pattern.rul'), file: 'pattern.rul' },
    });
    expect(back.pieces[0]?.base.plan.name).toBe('d\u0155ape');
  });
});

/**
 * A reader of its own: the vertices of each seam line, or boundary, in every size. A vertex has the moves of the
 * rule that is written at it on the layers of turn and curve points; one without goes with the vertices with
 * rules before and after it, by its share of the way from vertex to vertex.
 */
const MOVE = `
import sys, json, math, re, ezdxf
text = open(sys.argv[2]).read()
count = int(re.search(r'NUMBER OF SIZES: (\\d+)', text).group(1))
rules = {}
for number, body in re.findall(r'RULE: DELTA (\\d+)\\n((?:[-0-9.e, ]+\\n)+)', text):
    rules[int(number)] = [tuple(map(float, line.split(', '))) for line in body.strip().split('\\n')]
out = {}
for b in ezdxf.readfile(sys.argv[1]).blocks:
    if b.name.startswith('*'):
        continue
    lines = {e.dxf.layer: [(v.dxf.location.x, v.dxf.location.y) for v in e.vertices] for e in b.query('POLYLINE') if e.is_closed}
    places = lines.get('14') or lines['1']
    said = {}
    for t in b.query('TEXT'):
        if t.dxf.text.startswith('# ') and t.dxf.layer in ('2', '3'):
            said[(t.dxf.insert.x, t.dxf.insert.y)] = rules[int(t.dxf.text[2:])]
    n = len(places)
    start = next(i for i in range(n) if places[i] in said)
    places = places[start:] + places[:start]
    along = [0]
    for i in range(n):
        along.append(along[-1] + math.dist(places[i], places[(i + 1) % n]))
    ruled = [i for i in range(n) if places[i] in said] + [n]
    moved = [[] for _ in range(count)]
    for low, high in zip(ruled, ruled[1:]):
        a, z = said[places[low]], said[places[high % n]]
        for i in range(low, high):
            share = (along[i] - along[low]) / (along[high] - along[low])
            for size in range(count):
                moved[size].append([places[i][k] + a[size][k] + share * (z[size][k] - a[size][k]) for k in (0, 1)])
    out[b.name] = {'sizes': moved, 'ruled': len(ruled) - 1}
print(json.dumps(out))
`;

interface Moved {
  readonly sizes: readonly (readonly (readonly [number, number])[])[];
  readonly ruled: number;
}

describeDxf('points without a rule, moved by a reader in Python', () => {
  const path = folder();
  it.each(['pencil', 'shared-pencil'])('lie on every size of %s', (style) => {
    const chart = chartText(
      'in',
      { waist_girth: ['26', '30', '33'], hip_girth: ['36', '40', '43'] },
      ['S', 'M', 'L'],
    );
    const result = gradeChart({ chart, base: 'M', style });
    for (const { name, text } of dxfFiles(result).files) writeFileSync(join(path, name), text);
    const args = [join(path, 'pattern.dxf'), join(path, 'pattern.rul')];
    const blocks = JSON.parse(python(MOVE, ...args)) as Readonly<Record<string, Moved>>;
    let [ruled, all, worst] = [0, 0, 0];
    result.range.sizes.forEach(({ pieces }, size) => {
      for (const piece of pieces) {
        const outline = outlineSegments(piece);
        const block = blocks[piece.plan.name];
        const vertices = block?.sizes[size] ?? [];
        ruled += block?.ruled ?? 0;
        all += vertices.length;
        for (const [x, y] of vertices) {
          const away = outline.map((segment) => distanceToSegment(segment, { x, y: -y }));
          worst = Math.max(worst, Math.min(...away));
        }
      }
    });
    // Chords in the place of curves count the way a little otherwise.
    expect(worst).toBeLessThanOrEqual(2 * EXCHANGED);
    expect(ruled / all).toBeLessThan(0.7);
  });
});

/** A triangle with a bent side, by ezdxf, with light polylines and in the release asked for. */
const WRITE = `
import sys, ezdxf
d = ezdxf.new(sys.argv[2])
b = d.blocks.new('TRIANGLE')
points = [(0, 0), (100, 0), (60, 55), (0, 80)]
if sys.argv[2] == 'R12':
    b.add_polyline2d(points, dxfattribs={'layer': '1'}).close(True)
else:
    b.add_lwpolyline(points, close=True, dxfattribs={'layer': '1'})
rules = {(0, 0): 1, (100, 0): 2, (0, 80): 1}
for p in points:
    layer = '3' if p == (60, 55) else '2'
    b.add_point(p, dxfattribs={'layer': layer})
    if p in rules:
        b.add_text('# %d' % rules[p], dxfattribs={'layer': layer, 'insert': p, 'height': 2})
b.add_line((10, 10), (10, 60), dxfattribs={'layer': '7'})
b.add_circle((20, 20), 3, dxfattribs={'layer': '11'})
d.header['$INSUNITS'] = 4
d.modelspace().add_text('UNITS: MILLIMETERS', dxfattribs={'layer': '15', 'height': 5})
d.modelspace().add_blockref('TRIANGLE', (0, 0))
d.saveas(sys.argv[1])
`;
import { cutOf } from '../pattern/cut-of';
const TABLE = `GRADE RULE TABLE: triangle
UNITS: METRIC
NUMBER OF SIZES: 3
SIZE LIST: S M L
SAMPLE SIZE: M
RULE: DELTA 1
0 0
0 0
0 0
RULE: DELTA 2
-8.0, 1.5
0.0, 0.0
8.0, -1.5
END
`;

describeDxf('a DXF file that ezdxf wrote', () => {
  const path = folder();
  it.each(['R12', 'R2000', 'R2010'])('is graded, from release %s', (release) => {
    const file = join(path, `${release}.dxf`);
    python(WRITE, file, release);
    const { range, findings } = gradePattern({
      pattern: { text: readFileSync(file, 'utf8'), file },
      rules: { text: TABLE, file: 'triangle.rul' },
    });
    const large = range.sizes[2]?.pieces[0];
    expect(large?.plan.name).toBe('TRIANGLE');
    const corners = large?.plan.outline.map(
      ({ from }) => large.points[large.plan.index.get(from) ?? -1],
    );
    expect(corners?.[0]).toEqual({ x: 0, y: 0 });
    expect(corners?.[1]?.x).toBeCloseTo(108, 9);
    expect(corners?.[1]?.y).toBeCloseTo(1.5, 9);
    // The curve point has no rule and goes a share of the way with its neighbor.
    expect(corners?.[2]?.x).toBeGreaterThan(60);
    expect(corners?.[2]?.x).toBeLessThan(68);
    // A hole that would have to be cut fails.
    const lost = findings.find(({ check }) => check === 'left-out');
    expect(lost?.message).toContain('1 CIRCLE on layer 11, internal cut out, in row');
    expect(lost?.severity).toBe('fail');
  });
});

/**
 * A piece in parts, by ezdxf: a light polyline with bulges seen from behind, a spline through fit
 * points with its control points, an arc and a line; nested once and inserted as asked. Printed are
 * the places along it as ezdxf has them on the sheet, counted from the insert.
 */
const PARTS = `
import sys, json, math, ezdxf
release, sx, sy, turn, z = sys.argv[2], *map(float, sys.argv[3:7])
d = ezdxf.new(release)
d.header['$INSUNITS'] = 5
part = d.blocks.new('PART', base_point=(3, 4))
flat = {'layer': '1'}
part.add_lwpolyline([(0, 0, 0.3), (-20, -5, -0.8), (-30, 0, 0)], format='xyb', dxfattribs={**flat, 'extrusion': (0, 0, -1)})
part.add_open_spline([(30, 0), (36, 9), (29, 18), (41, 30), (33, 44), (30, 50)], degree=3, dxfattribs=flat)
part.add_line((0, 50), (0, 0), dxfattribs=flat)
part.add_arc((15, 50), 15, 0, 180, dxfattribs=flat)
part.add_ellipse((15, 25), (6, 2), 0.4, dxfattribs={'layer': '8'})
piece = d.blocks.new('PIECE')
piece.add_blockref('PART', (7, 9), dxfattribs={'rotation': 25, 'xscale': -1})
attribs = {'xscale': sx, 'yscale': sy, 'rotation': turn, 'extrusion': (0, 0, z)}
insert = d.modelspace().add_blockref('PIECE', (500, 70), dxfattribs=attribs)
d.modelspace().add_text('UNITS: CM', dxfattribs={'layer': '15', 'height': 2})
d.saveas(sys.argv[1])
places = []
def points(e):
    if e.dxftype() in ('LWPOLYLINE', 'INSERT'):
        return [v for inner in e.virtual_entities() for v in points(inner)]
    if e.dxf.layer != '1':
        return []
    return [e.dxf.start, e.dxf.end] if e.dxftype() == 'LINE' else e.flattening(0.001)
places = [[v.x - 500 * z, v.y - 70] for v in points(insert)]
print(json.dumps(places))
`;

describeDxf('a piece in parts that ezdxf wrote', () => {
  const path = folder();
  it.each([
    ['R2000', 1, 1, 0, 1],
    ['R2010', 1, 1, 90, 1],
    ['R2000', -1, 1, 30, 1],
    ['R2010', 0.5, 0.5, 200, 1],
    ['R2000', 2, -2, -45, -1],
    ['R2010', 1, 1, 10, -1],
  ])('is where ezdxf has it: %s, scaled %s and %s, turned by %s, z %s', (...how) => {
    const file = join(path, 'parts.dxf');
    const places = JSON.parse(python(PARTS, file, ...how.map(String))) as [number, number][];
    const rules = TABLE.replace('METRIC', 'CM');
    const { range, findings } = gradePattern({
      pattern: { text: readFileSync(file, 'utf8'), file },
      rules: { text: rules, file: 'parts.rul' },
    });
    const [piece] = range.sizes[1]?.pieces ?? [];
    if (piece === undefined) throw new Error('no piece');
    const outline = outlineSegments(piece);
    expect(places.length).toBeGreaterThan(200);
    for (const [x, y] of places) {
      const at = { x: 10 * x, y: -10 * y };
      const away = Math.min(...outline.map((segment) => distanceToSegment(segment, at)));
      expect(away).toBeLessThanOrEqual(CURVE_POINTS);
    }
    const reach = Math.max(...places.map(([x]) => x)) - Math.min(...places.map(([x]) => x));
    const { left, right } = segmentsBounds(outline);
    expect((right - left) / 10).toBeCloseTo(reach, 2);
    expect(findings.filter(({ severity }) => severity === 'fail')).toEqual([]);
  });
});
