/** A wrong sign in a formula of a drafted block, whose rules are derived and not typed. */
import { describe, expect, it } from 'vitest';
import type { Block, BlockPiece } from '../../src/draft/block';
import { QUARTER_SKIRT } from '../../src/draft/quarter-skirt';
import type { StyleChoice } from '../../src/draft/style-file';
import type { Axis } from '../../src/rule-sheet/rule-sheet';
import type { GradeResult } from '../../src/jobs/grade-result';
import { gradeChart } from '../../src/jobs/grade-chart';
import { TROUSER } from '../drill/trouser';
import { runs } from '../samples';
import { chartText } from '../skirts';
import { STYLE_NAMES } from '../styles';

/** Invented bodies, cm; every girth and length grows. */
const SKIRT_CHART = chartText(
  'cm',
  {
    waist_girth: [64, 68, 72, 76, 82],
    hip_girth: [90, 94, 98, 102, 108],
    waist_to_hip: [19, 19.5, 20, 20.5, 21],
    skirt_length: [58, 59, 60, 61, 62],
  },
  ['36', '38', '40', '42', '44'],
);
const TROUSER_CHART = chartText(
  'cm',
  {
    waist_girth: [66, 70, 74, 79, 84],
    hip_girth: [92, 96, 100, 105, 110],
    waist_height: [102, 103, 104, 105, 106],
    crotch_height: [76.5, 77, 77.5, 78, 78.5],
  },
  ['36', '38', '40', '42', '44'],
);
const BASE = '40';
/** mm. A sign of less can hardly be seen. */
const SEEN = 1;

interface Drafted {
  readonly name: string;
  readonly chart: string;
  readonly block: Block;
  readonly settings: StyleChoice['style']['settings'];
}

const taper = (value: string) => [
  { parameter: 'hem_taper', value, note: 'invented for tests', place: {} },
];
const DRAFTED: readonly Drafted[] = [
  { name: 'pencil', chart: SKIRT_CHART, block: QUARTER_SKIRT, settings: taper('1 in') },
  { name: 'straight', chart: SKIRT_CHART, block: QUARTER_SKIRT, settings: taper('0 in') },
  { name: 'trouser', chart: TROUSER_CHART, block: TROUSER.style.block, settings: [] },
];

/** A point of a piece, and the axis along which its formula is wrong. */
interface Place {
  readonly piece: string;
  readonly point: string;
  readonly axis: Axis;
}

/** The block with the graded part of one coordinate turned round. */
function turned(block: Block, { piece, point, axis }: Place): Block {
  const wrong = (own: BlockPiece): BlockPiece => {
    if (own.name !== piece) return own;
    const right = own.points.find(({ name }) => name === point)?.[axis] ?? '';
    return {
      ...own,
      values: [...(own.values ?? []), { name: 'as_drawn', quantity: 'length', formula: right }],
      points: own.points.map((one) =>
        one.name === point ? { ...one, [axis]: '2*base.as_drawn - as_drawn' } : one,
      ),
    };
  };
  return {
    ...block,
    layout: (...context) => {
      const layout = block.layout(...context);
      return { ...layout, pieces: layout.pieces.map(wrong) };
    },
  };
}

function grade({ chart, settings }: Drafted, block: Block): GradeResult {
  const style = { name: 'planted', description: '', block, settings };
  return gradeChart({ chart, base: BASE, style: { style, settings: [] } });
}

const accusing = ({ findings }: GradeResult) =>
  findings.filter(({ check }) => /^(wrong-sign|rule-slip|rule-doubt)$/u.test(check));

/** Every coordinate that moves by what can be seen. */
function moving({ range }: GradeResult): readonly Place[] {
  return range.plans.flatMap(({ name: piece, pointNames }, p) =>
    pointNames.flatMap((point, i) =>
      (['x', 'y'] as const)
        .filter((axis) => range.rules.moves.some((of) => Math.abs(of[p]?.[i]?.[axis] ?? 0) >= SEEN))
        .map((axis) => ({ piece, point, axis })),
    ),
  );
}

/** So many of a list, evenly spread. */
function spread<T>(all: readonly T[], count: number): readonly T[] {
  const every = Math.max(1, all.length / count);
  return all.filter((_, i) => Math.floor(i / every) !== Math.floor((i - 1) / every));
}

/** What the findings say of the place: it alone, a doubt, nothing, or another place. */
function verdictOn(result: GradeResult, { piece, point, axis }: Place): Verdict {
  const found = accusing(result);
  const stated = found.filter(({ check }) => check !== 'rule-doubt');
  const words = `the sign of d${axis} at ${piece} ${point} is probably wrong`;
  const isRight = stated.every(
    (own) => own.piece === piece && own.subject === point && own.message.startsWith(words),
  );
  if (!isRight) return 'wrong';
  if (stated.length > 0) return 'named';
  return found.length > 0 ? 'doubted' : 'missed';
}

type Verdict = 'named' | 'doubted' | 'missed' | 'wrong';

describe('a wrong sign in a drafted block', () => {
  const counts: Record<Verdict, number> = { named: 0, doubted: 0, missed: 0, wrong: 0 };

  it.each(DRAFTED)('is looked for in $name, and not seen where there is none', (drafted) => {
    const right = grade(drafted, drafted.block);
    expect(accusing(right)).toEqual([]);
    for (const place of spread(moving(right), runs(8))) {
      const verdict = verdictOn(grade(drafted, turned(drafted.block, place)), place);
      counts[verdict]++;
      if (verdict !== 'named')
        console.log(`${drafted.name}, ${place.piece} ${place.point} d${place.axis}: ${verdict}`);
    }
  });

  it('is named at its point in three of four, and no other point is accused', () => {
    const all = counts.named + counts.doubted + counts.missed + counts.wrong;
    console.log(`of ${all} signs turned in a block:`, counts);
    expect(all).toBeGreaterThanOrEqual(DRAFTED.length * 8);
    expect(counts.named / all).toBeGreaterThanOrEqual(0.75);
    expect(counts.wrong / all).toBeLessThanOrEqual(0.01);
  });
});

it.each(STYLE_NAMES)('accuses no point of the block of %s as it is', (style) => {
  expect(accusing(gradeChart({ chart: SKIRT_CHART, base: BASE, style }))).toEqual([]);
});
