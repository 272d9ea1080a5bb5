/** The sample room at production size, beside ezdxf writing the same drawing and a loop by hand. */
import { spawnSync } from 'node:child_process';
import { createWriteStream, mkdtempSync, rmSync, statSync, writeFileSync } from 'node:fs';
import { once } from 'node:events';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { writeNest } from '../../src/dxf/write-nest';
import type { SizedPieces } from '../../src/grade/graded-range';
import { gradedPieces, gradeGiven } from '../../src/given/grade-given';
import { gradedPointsTable } from '../../src/render/tables';
import { walkPair, wayOf } from '../../src/sewn/walk-pair';
import { PIECES, POINTS, SIZES, byHand, manyPieces } from './many-pieces';

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
  const range = gradeGiven(pattern, rules, { roundingStep: undefined, stackPoint: '' });
  const graded = performance.now();
  const base = range.sizes[rules.base]?.pieces ?? [];
  const walks = pattern.seams.flatMap((pair) => {
    const way = wayOf(base, pair);
    return range.sizes.map(({ pieces }) => walkPair(pieces, pair, way));
  });
  const walked = performance.now();
  const folder = mkdtempSync(join(tmpdir(), 'skirtgrade-bench-'));
  writeFileSync(
    join(folder, 'points.csv'),
    gradedPointsTable(range.sizes, { unit: 'cm', fractions: false }),
  );
  const listed = performance.now();
  const stream = createWriteStream(join(folder, 'nest.dxf'));
  for (const part of writeNest(range.sizes)) {
    if (!stream.write(part)) await once(stream, 'drain');
  }
  stream.end();
  await once(stream, 'finish');
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
  compareEzdxf(folder, range.sizes);
  rmSync(folder, { recursive: true });
}

/** A tenth of the pieces, since ezdxf takes its time. */
function compareEzdxf(folder: string, all: readonly SizedPieces[]): void {
  if (PYTHON === undefined) {
    console.log('  ezdxf is not there to compare with (package python3-ezdxf)');
    return;
  }
  const sizes = all.map(({ label, pieces }) => ({ label, pieces: pieces.slice(0, PIECES / 10) }));
  const start = performance.now();
  writeFileSync(join(folder, 'own.dxf'), [...writeNest(sizes)].join(''));
  const own = performance.now() - start;
  const lines = linesOf([...writeNest(sizes)].join(''));
  writeFileSync(join(folder, 'lines.json'), JSON.stringify(lines));
  const { stdout } = spawnSync(
    PYTHON,
    ['-c', EZDXF, join(folder, 'lines.json'), join(folder, 'ez.dxf')],
    { encoding: 'utf8' },
  );
  const theirs = Number(stdout);
  console.log(`  a tenth of it as DXF         ${own.toFixed(0)} ms`);
  console.log(`  ezdxf writing the same       ${theirs.toFixed(0)} ms`);
  console.log(`  ratio ${(own / theirs).toFixed(2)} (goal below 1)`);
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
