/** The sample room at production size, beside ezdxf writing the same drawing and a loop by hand. */
import { spawnSync } from 'node:child_process';
import {
  closeSync,
  createWriteStream,
  mkdtempSync,
  openSync,
  readFileSync,
  rmSync,
  statSync,
  writeFileSync,
  writeSync,
} from 'node:fs';
import { once } from 'node:events';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { writeNest } from '../../src/dxf/write-nest';
import type { SizedPattern } from '../../src/grade/graded-pattern';
import { gradedPieces } from '../../src/given/grade-given';
import { gradeSizes } from '../../src/grade/grade-sizes';
import { gradedPointsRows } from '../../src/files/tables';
import { sewnEdges, wayOf } from '../../src/seams/seam-way';
import { walkPair } from '../../src/seams/walk-pair';
import { PIECES, POINTS, SIZES, byHand, manyFiles, manyPieces } from './many-pieces';

const PYTHON = ['/usr/bin/python3', 'python3'].find(
  (program) => spawnSync(program, ['-c', 'import ezdxf']).status === 0,
);

/** The same polylines on the same layers; the time is told without starting Python. */
const EZDXF = `
import sys, json, time, ezdxf
lines = json.load(open(sys.argv[1]))
start = time.perf_counter()
d = ezdxf.new('R12')
for layer in sorted({l for l, _ in lines}): d.layers.add(layer)
m = d.modelspace()
for layer, points in lines: m.add_polyline2d(points, dxfattribs={'layer': layer}).close(True)
d.saveas(sys.argv[2])
print(1000 * (time.perf_counter() - start))
`;

type Compare = (
  rounds: number,
  ours: () => void,
  plain: () => void,
) => { readonly ours: number; readonly plain: number; readonly ratio: number };

export async function sampleRoom(compare: Compare): Promise<void> {
  const { pattern, rules } = manyPieces();
  console.log(`sample room, ${PIECES} pieces of ${POINTS} points over ${SIZES} sizes`);
  // Straight edges alone, since a loop of additions knows no curves.
  const straight = { pieces: pattern.pieces.map((piece) => ({ ...piece, splines: [] })) };
  const grading = compare(
    11,
    () => void gradedPieces(straight, rules),
    () => void byHand(pattern, rules),
  );
  console.log(`  grading                      ${grading.ours.toFixed(0)} ms`);
  console.log(`  a loop of additions          ${grading.plain.toFixed(0)} ms`);
  console.log(`  ratio ${grading.ratio.toFixed(2)} (goal at most 3)`);

  const start = performance.now();
  const moved = gradedPieces(pattern, rules);
  const sizes = rules.sizes.map((label, i) => ({
    label,
    pieces: moved[i] ?? [],
    parameters: new Map<string, number>(),
  }));
  const options = { base: rules.base, rounding: undefined, stackPoint: '' };
  const range = gradeSizes(sizes, options);
  const graded = performance.now();
  const base = range.sizes[rules.base]?.pieces ?? [];
  const areSewn = sewnEdges(pattern.seams);
  const walks = pattern.seams.flatMap((pair) => {
    const way = wayOf(base, pair, areSewn);
    return range.sizes.map(({ pieces }) => walkPair(pieces, pair, way));
  });
  const walked = performance.now();
  const folder = mkdtempSync(join(tmpdir(), 'skirtgrade-bench-'));
  await streamed(join(folder, 'points.csv'), gradedPointsRows(range.sizes, DISPLAY));
  const listed = performance.now();
  await streamed(join(folder, 'nest.dxf'), writeNest(range.sizes));
  const written = performance.now();
  const megabytes = (bytes: number): string => (bytes / 1e6).toFixed(0);
  console.log(`  graded with curves           ${(graded - start).toFixed(0)} ms`);
  console.log(`  ${walks.length} seams walked           ${(walked - graded).toFixed(0)} ms`);
  console.log(`  points written as CSV        ${(listed - walked).toFixed(0)} ms`);
  const bytes = statSync(join(folder, 'nest.dxf')).size;
  console.log(
    `  nest written as DXF          ${(written - listed).toFixed(0)} ms, ${megabytes(bytes)} MB`,
  );
  console.log(
    `  memory at its most           ${(process.resourceUsage().maxRSS / 1e3).toFixed(0)} MB`,
  );
  wholeCommand(folder);
  compareEzdxf(folder, range.sizes);
  rmSync(folder, { recursive: true });
}

const DISPLAY = { unit: 'cm', fractions: false } as const;

async function streamed(path: string, parts: Iterable<string>): Promise<void> {
  const stream = createWriteStream(path);
  for (const part of parts) {
    if (!stream.write(part)) await once(stream, 'drain');
  }
  stream.end();
  await once(stream, 'finish');
}

/** Tells the most memory that a process took when it ends. */
const TELL_MEMORY =
  'data:text/javascript,process.on("exit",()=>process.stderr.write(String(process.resourceUsage().maxRSS)))';

/** The same order as files through the command, with all its drawings, checks and tables. */
function wholeCommand(folder: string): void {
  const { pattern, rules } = manyFiles();
  const [base, sheet, out] = ['many.csv', 'rules.csv', 'out'].map((name) => join(folder, name));
  if (base === undefined || sheet === undefined || out === undefined) return;
  writeFileSync(base, pattern);
  writeFileSync(sheet, rules);
  const start = performance.now();
  const { stderr } = spawnSync(
    process.execPath,
    ['--import', TELL_MEMORY, 'dist/cli.js', 'grade', '--pattern', base, '--rules', sheet].concat([
      '--dxf',
      '--out',
      out,
    ]),
    { encoding: 'utf8' },
  );
  console.log('  the whole command: drawings, checks, tables and DXF, from files to files');
  console.log(`    time                       ${(performance.now() - start).toFixed(0)} ms`);
  console.log(`    memory at its most         ${(Number(stderr) / 1e3).toFixed(0)} MB`);
}

/** The whole nest, which ezdxf takes a minute or two for. */
function compareEzdxf(folder: string, sizes: readonly SizedPattern[]): void {
  if (PYTHON === undefined) {
    console.log('  ezdxf is not there to compare with (package python3-ezdxf)');
    return;
  }
  const start = performance.now();
  const own = join(folder, 'own.dxf');
  const file = openSync(own, 'w');
  for (const part of writeNest(sizes)) writeSync(file, part);
  closeSync(file);
  const ours = performance.now() - start;
  writeFileSync(join(folder, 'lines.json'), JSON.stringify(linesOf(readFileSync(own, 'utf8'))));
  const { stdout } = spawnSync(
    PYTHON,
    ['-c', EZDXF, join(folder, 'lines.json'), join(folder, 'ez.dxf')],
    { encoding: 'utf8' },
  );
  const theirs = Number(stdout);
  console.log(`  the nest as DXF              ${ours.toFixed(0)} ms`);
  console.log(`  ezdxf writing the same lines ${theirs.toFixed(0)} ms`);
  console.log(`  ratio ${(ours / theirs).toFixed(2)} (goal below 1)`);
}

/** Layer and vertices of every polyline of a drawing. */
function linesOf(text: string): readonly (readonly [string, readonly (readonly number[])[]])[] {
  return text
    .split('0\nPOLYLINE\n')
    .slice(1)
    .map((part) => {
      const layer = /^8\n(.*)\n/u.exec(part)?.[1] ?? '0';
      const vertices = [...part.matchAll(/VERTEX\n8\n.*\n10\n(.*)\n20\n(.*)\n/gu)];
      return [layer, vertices.map(([, x, y]) => [Number(x), Number(y)])];
    });
}
