/** Rule sheets, and the rules of a drawing, as single facts: how far each point moves in each size. */
import { InputError } from '../../errors';
import { gradedPieces } from '../../given/grade-given';
import type { Pattern } from '../../pattern/pattern';
import { axisMoves, byPoint } from '../../rule-sheet/axis-moves';
import type { GivenRules } from '../../rule-sheet/point-rules';
import type { Axis, RuleCell, RuleSheet } from '../../rule-sheet/rule-sheet';
import { isFilled } from '../../rule-sheet/rule-sheet';
import type { SizeList } from '../../rule-sheet/size-list';
import { sizeList } from '../../rule-sheet/size-list';
import { imprintOf } from '../../table/imprint';
import { allStated } from '../../table/said-line';
import { statedBy, statedDown } from '../../table/statements';
import { unreadIn } from '../../table/unread';
import { tableNumber } from '../../units';
import type { Fact } from './facts';
import { statedFacts } from './stated-facts';

/** What a sheet says of itself, sizes and base among it. */
function ofSheet(sheet: RuleSheet): readonly Fact[] {
  const { comments } = sheet;
  return statedFacts({
    title: allStated(comments, 'title')[0]?.text,
    base: statedBy(sheet, 'base')?.text,
    imprint: imprintOf(comments),
    sizes: sheet.sizesKnown ? sheet.sizes : [],
    unread: unreadIn(sheet, ['base', 'sizes', 'y', 'blank']),
  });
}

/**
 * The facts of two sheets, of points and of named rules. As soon as one of them tells a size, both are told as
 * moves from the base, y down, so that steps in one are the moves of the other; `base` is for sheets that
 * state none. Formulas, and steps of sheets without any size, stand as they were typed. Throws what
 * `sizeList` and `axisMoves` throw.
 */
export function sheetFacts(
  sheets: readonly [RuleSheet, RuleSheet],
  base: string | undefined,
): readonly [readonly Fact[], readonly Fact[]] {
  const isSized = sheets.some(
    ({ cells, sizesKnown }) => sizesKnown || cells.some(({ size }) => size !== ''),
  );
  const [before, after] = sheets;
  const factsOf = (sheet: RuleSheet): readonly Fact[] => {
    const from = base ?? statedBy(sheet, 'base')?.text;
    if (isSized && from === undefined) refuseBaseless(sheet.file);
    const list = isSized ? sizeList(sheet, from) : undefined;
    return [...ofSheet(sheet), ...ruleFacts(sheet, list)];
  };
  return [factsOf(before), factsOf(after)];
}

function refuseBaseless(file: string): never {
  throw new InputError('base-missing', {
    what: 'nothing says from which size the rules count',
    allowed: 'a line such as "# base: 12" in the rule sheet',
    orField: 'pattern',
    place: { file },
  });
}

function ruleFacts(sheet: RuleSheet, list: SizeList | undefined): readonly Fact[] {
  const named = [...sheet.named].flatMap(([name, cells]) =>
    [...byPoint(cells).values()].map((axes) => [name, axes] as const),
  );
  return [...named, ...byPoint(sheet.cells)].flatMap(([name, axes]) =>
    (['x', 'y'] as const).flatMap((axis) => axisFacts(name, axis, axes[axis], { sheet, list })),
  );
}

function axisFacts(
  name: string,
  axis: Axis,
  cells: readonly RuleCell[],
  { sheet, list }: { readonly sheet: RuleSheet; readonly list: SizeList | undefined },
): readonly Fact[] {
  const { unit } = sheet;
  const sign = axis === 'y' ? statedDown(sheet) : 1;
  const filled = cells.filter(isFilled);
  const length = (mm: number) => ({ text: tableNumber(sign * mm, unit), unit });
  // The same words mean the opposite where the sheet, or the head of a column, counts the other way.
  const typed = ({ formula = '', reversed }: RuleCell): string =>
    sign < 0 === reversed ? formula : `minus (${formula})`;
  if (list === undefined || filled.some(({ formula }) => formula !== undefined)) {
    return filled.map((cell) => ({
      ...{ of: 'rule', name, size: cell.size },
      value: `${cell.form === 'step' ? 'step_' : ''}d${axis}`,
      ...(cell.mm === undefined ? { text: typed(cell), unit: '' } : length(cell.mm)),
    }));
  }
  if (filled.length === 0) return [];
  return axisMoves(cells, list, undefined).flatMap((mm, i) =>
    mm === undefined || i === list.base
      ? []
      : [{ of: 'rule', name, size: list.labels[i] ?? '', value: `d${axis}`, ...length(mm) }],
  );
}

/**
 * How far each point of a drawing moves on the paper, y down, whether by a rule of its own or with its
 * neighbors; so a rule that is left to these is no change.
 */
export function drawingRuleFacts(pattern: Pattern, rules: GivenRules): readonly Fact[] {
  const { pieces, unit } = pattern;
  const { sizes, base } = rules;
  const graded = gradedPieces(pattern, rules);
  return pieces.flatMap(({ base: { plan, points } }, p) =>
    plan.pointNames.flatMap((point, i) => {
      // The handles of a spline follow its points.
      if (point.includes('.')) return [];
      const own = { of: 'rule', name: `${plan.name}.${point}`, unit };
      return sizes.flatMap((size, s) => {
        const [from, to] = [points[i], graded[s]?.[p]?.points[i]];
        if (s === base || from === undefined || to === undefined) return [];
        return (['x', 'y'] as const).map((axis) => ({
          ...{ ...own, size, value: `d${axis}` },
          text: tableNumber(to[axis] - from[axis], unit),
        }));
      });
    }),
  );
}
