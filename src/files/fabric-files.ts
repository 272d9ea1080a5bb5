/** The cloth to buy as files: the table of all sizes, and a lay of the base size. */
import { InputError } from '../errors';
import type { ClothWidth } from '../fabric/cloth';
import { CLOTH_NAMES, USUAL_NAP } from '../fabric/cloth';
import type { CutSize, FabricNeed } from '../fabric/fabric-needs';
import { SPARE, fabricNeeds, leastNeed } from '../fabric/fabric-needs';
import { isLay } from '../fabric/lay';
import type { SizedPattern } from '../grade/graded-pattern';
import type { GradeResult } from '../jobs/grade-result';
import type { PiecePlan } from '../pattern/piece';
import { laySheet } from '../render/lay-sheet';
import { svg } from '../render/svg';
import type { Exported } from './exports';
import { fabricTables, worthLaying } from './fabric-table';
import { fabricNeedsTable } from './lay-table';
import type { ResultFile } from './result-file';

/** The usual width of skirt cloth, which the lays are drawn on. */
const DRAWN: Readonly<Record<'metric' | 'inch', ClothWidth>> = {
  metric: { value: 140, unit: 'cm' },
  inch: { value: 54, unit: 'in' },
};

/**
 * `fabric.csv` for the sizes shown, and `lay-<cloth>.svg` for each cloth: the base size, the shell
 * with a nap and the others without, folded unless that takes more. A cloth that the base does not
 * go on has no drawing. Throws InputError `bad-option` if the pattern does not say how its pieces are
 * cut.
 */
export function fabricFiles({ title, display, range, shown }: GradeResult): Exported {
  const needs = clothNeeds({ range, shown });
  const width = DRAWN[display.unit === 'in' ? 'inch' : 'metric'];
  const isShown = shown.some(({ label }) => label === range.base);
  const base = range.sizes.filter(({ label }) => label === range.base).map(cutSize);
  const drawn = isShown ? needs : fabricNeeds(base, { widths: [width] });
  const lays = CLOTH_NAMES.flatMap((cloth): ResultFile | [] => {
    const choices = drawn
      .filter((need) => need.cloth === cloth && need.nap === USUAL_NAP[cloth])
      .filter((need) => need.width.value === width.value && need.width.unit === width.unit)
      .flatMap(({ sizes }) => sizes.filter(({ label }) => label === range.base));
    const need = leastNeed(choices);
    if (need?.buy === undefined || !isLay(need.lay)) return [];
    const { lay, buy, label: size } = need;
    return {
      name: `lay-${cloth}.svg`,
      text: svg(laySheet({ title, size, cloth, width, lay, buy, spare: SPARE })),
    };
  });
  const table = { name: 'fabric.csv', text: fabricNeedsTable(needs) };
  const told = worthLaying(needs.filter(({ nap }) => nap === 'with'));
  return {
    files: [table, ...lays],
    findings: [],
    tables: fabricTables(told, { pictured: false, unit: display.unit }),
  };
}

/** What the sizes shown need of every cloth. Throws InputError `bad-option` as `fabricFiles` does. */
export function clothNeeds({
  range,
  shown,
}: Pick<GradeResult, 'range' | 'shown'>): readonly FabricNeed[] {
  for (const plan of range.plans) refuseUncut(plan);
  return fabricNeeds(shown.map(cutSize));
}

/** Whether every piece says how often it is cut, and from what line. */
export function isLayable({ range }: Pick<GradeResult, 'range'>): boolean {
  return (
    range.sizes.every(({ cutPieces }) => cutPieces !== undefined) &&
    range.plans.every((plan) => plan.cuttings.length > 0 && !lacksFold(plan))
  );
}

function lacksFold({ outline, cuttings }: PiecePlan): boolean {
  return cuttings.some(({ onFold }) => onFold) && !outline.some(({ kind }) => kind === 'fold');
}

function refuseUncut(plan: PiecePlan): void {
  if (plan.cuttings.length === 0) {
    refuse(
      `nothing says how often ${plan.name} is cut`,
      'a cell such as `2` or `1 on fold` in column cut',
    );
  }
  if (lacksFold(plan)) {
    refuse(
      `${plan.name} is cut on the fold, and none of its edges is on it`,
      'a mark in column fold',
    );
  }
}

/** A size as it is laid. Throws InputError `bad-option` if it has no cut lines. */
export function cutSize({ label, cutPieces }: SizedPattern): CutSize {
  if (cutPieces !== undefined) return { label, pieces: cutPieces };
  return refuse(
    'the pattern has no cut lines, and cloth is laid with pieces as they are cut',
    'a line such as `# allowance: 1.5` in the pattern, or a column allowance',
  );
}

function refuse(what: string, allowed: string): never {
  throw new InputError('bad-option', { what, allowed, place: { field: 'fabric' } });
}
