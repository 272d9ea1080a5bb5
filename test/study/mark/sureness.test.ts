import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { diagnosed } from '../../../src/cli/assess-report';
import type { Marking } from '../../../src/study/mark/mark-sheet';
import { markSheet } from '../../../src/study/mark/mark-sheet';
import { surenessOf, tellingApart } from '../../../src/study/mark/sureness';
import { PRINTED_SEED, SEED, runs } from '../../samples';
import { chartText } from '../../skirts';
import { plantedChart, plantedChartText } from './planted-chart';
import { handedIn, isOfUnit, plantedSlip, sheetText } from './planted-slips';

const SIZES = ['10', '12', '14', '16', '18'];

/** Steps of 1, 1, 1, 2 in of the waist, and of `hips` of the hip; all else stays. */
const chartOf = (hips: readonly number[]) =>
  chartText(
    'in',
    {
      waist_girth: [27, 28, 29, 30, 32],
      hip_girth: hips,
      waist_to_hip: SIZES.map(() => 8),
      skirt_length: SIZES.map(() => 24),
    },
    SIZES,
  );
const HIPS = [37, 38, 39, 41, 43];

function mark(rows: readonly string[], hips = HIPS): Marking {
  return markSheet({
    style: 'pencil',
    chart: chartOf(hips),
    base: '14',
    answered: true,
    sheet: ['# unit: in', ['point', 'axis', ...SIZES].join(), ...rows, ''].join('\n'),
  });
}

/** What tells the first slip from the one of this id. */
function apart(marking: Marking, id: string) {
  const [found] = marking.diagnosis.found;
  const other = found?.alike.find((one) => one.id === id);
  if (found === undefined || other === undefined) throw new Error(`${id} is not alike`);
  const told = tellingApart(diagnosed(marking), found, other);
  if (told.by === 'nothing') return told;
  const { piece, point, axis } = told.row;
  const row = `${piece}.${point} d${axis}`;
  return 'sizes' in told
    ? { by: told.by, row, sizes: told.sizes.map((i) => SIZES[i]) }
    : { by: told.by, row, turnedBy: told.turnedBy.id };
}

const HIP = 'front.side_hip,dx,-0.5,-0.25,0,0.5,1';
/** Right from the chart: a quarter of the waist. */
const DART = 'front.dart_inner,dx,-0.25,-0.125,0,0.125,0.375';

describe('what tells slips with the same numbers apart', () => {
  it('is a blank in which they differ', () => {
    // A quarter of the hip in 16 is that of a break one size too early: 2 in for 1. In 18 the hip has
    // grown by 5 in, and the waist with the break would have by 4.
    const hips = [37, 38, 39, 41, 44];
    const marking = mark(
      ['front.side_waist,dx,-0.5,-0.25,0,0.5,', 'front.side_hip,dx,-0.5,-0.25,0,0.5,1.25'],
      hips,
    );
    expect(marking.diagnosis.found.map(({ slip }) => slip.id)).toEqual(['hip-for-waist']);
    expect(apart(marking, 'break 14-16 as 16-18')).toEqual({
      ...{ by: 'blank', row: 'front.side_waist dx', sizes: ['18'] },
    });
  });

  it('is a row that one of them would have turned and that is right', () => {
    const marking = mark(['front.side_waist,dx,-0.5,-0.25,0,0.5,1', HIP, DART]);
    expect(apart(marking, 'copied front.side_waist side_hip x')).toEqual({
      ...{ by: 'right', row: 'front.dart_inner dx', turnedBy: 'hip-for-waist' },
    });
  });

  it('is a row that is blank and that one of them would turn', () => {
    const marking = mark(['front.side_waist,dx,-0.5,-0.25,0,0.5,1', HIP]);
    expect(apart(marking, 'copied front.side_waist side_hip x')).toEqual({
      ...{ by: 'blank-row', row: 'front.dart_inner dx', turnedBy: 'hip-for-waist' },
    });
  });

  it('is nothing where both would turn the same rows in the same way', () => {
    // With these steps the hip is the waist with its break one size too early, wherever the waist counts.
    const marking = mark(['front.side_waist,dx,-0.5,-0.25,0,0.5,1', HIP, DART]);
    expect(apart(marking, 'break 14-16 as 16-18')).toEqual({ by: 'nothing' });
  });

  it('tells, once a blank that would tell is filled in', () => {
    const sheets = plantedChart.chain((chart) =>
      fc
        .constantFrom('break', 'hip-for-waist')
        .chain((kind) => plantedSlip(chart, kind))
        .map((slip) => ({ chart, slip })),
    );
    let told = 0;
    for (const { chart, slip } of fc.sample(sheets, { seed: SEED, numRuns: runs(20, 300) })) {
      if (!isOfUnit(chart, slip)) continue;
      const full = handedIn(chart, [slip]);
      const marked = (cells: readonly (readonly number[])[]) =>
        markSheet({
          style: 'pencil',
          chart: plantedChartText(chart),
          base: chart.sizes[chart.base] ?? '',
          sheet: sheetText(chart, cells).replaceAll('NaN', ''),
        });
      // The two largest sizes, or those below them where the base is among these, are not filled in.
      const isBlank = (i: number) => i !== chart.base && i >= chart.sizes.length - 2;
      const partly = marked(full.map((row) => row.map((cell, i) => (isBlank(i) ? NaN : cell))));
      const [one] = partly.diagnosis.found;
      if (one === undefined || partly.diagnosis.found.length > 1) continue;
      for (const other of one.alike) {
        const apartBy = tellingApart(diagnosed(partly), one, other);
        if (apartBy.by !== 'blank') continue;
        told++;
        const [now] = marked(full).diagnosis.found;
        const left = now === undefined ? [] : [now.slip.id, ...now.alike.map(({ id }) => id)];
        expect(
          [one.slip.id, other.id].every((id) => left.includes(id)),
          `${slip.id}: ${one.slip.id} or ${other.id}, ${PRINTED_SEED}`,
        ).toBe(false);
      }
    }
    expect(told).toBeGreaterThan(runs(1, 20));
  });
});

describe('how sure a slip is', () => {
  const sureness = (marking: Marking) => {
    const [found] = marking.diagnosis.found;
    if (found === undefined) throw new Error('no slip is found');
    return surenessOf(diagnosed(marking), found);
  };

  it('is told by what it alone gives, and where', () => {
    const whole = 'front.side_waist,dx,-2,-1,0,1,3';
    expect(sureness(mark([whole, HIP]))).toEqual({
      ...{ grade: 'sure', numbers: 4, isExact: true, rows: 1, couldBe: 2 },
    });
    // One of three rows is a lapse at best.
    expect(sureness(mark([whole, HIP, DART]))).toMatchObject({ grade: 'likely', couldBe: 3 });
    const near = sureness(mark(['front.side_waist,dx,-2.02,-1,0,1,3.02', HIP]));
    expect(near).toMatchObject({ grade: 'likely', isExact: false });
    const open = sureness(mark(['front.side_waist,dx,-0.5,-0.25,0,0.5,1', HIP]));
    expect(open).toMatchObject({ grade: 'open', numbers: 2 });
  });
});
