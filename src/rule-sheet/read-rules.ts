/** A rule sheet as the rules of a pattern's points, for grading. */
import type { SizeChart } from '../chart/size-chart';
import type { Place } from '../errors';
import { InputError } from '../errors';
import { point } from '../geometry/point';
import type { PiecePlan } from '../pattern/piece';
import { statedBy, statedDown } from '../table/statements';
import { unreadIn } from '../table/unread';
import type { LengthUnit } from '../units';
import { trimmed } from '../units';
import { axisMoves, byPoint } from './axis-moves';
import { matchName } from '../table/name-match';
import { inWords, definedRule } from './point-cells';
import type { GivenRule, GivenRules } from './point-rules';
import { MOST_MOVE } from './point-rules';
import { readRuleSheet } from './read-rule-sheet';
import { readLibrary, refuseOtherCount } from './rule-library';
import type { Axis, RuleCell, RuleSheet } from './rule-sheet';
import { isFilled } from './rule-sheet';
import type { SizeList } from './size-list';
import { sizeList } from './size-list';

/** What the rules are for. */
export interface RuleSources {
  readonly pieces: readonly RuledPiece[];
  /** Unit of a sheet that does not say its own. */
  readonly unit: LengthUnit;
  /** Whether the pattern counts y upward, so that a sheet which does not say its own may as well. */
  readonly countsUp?: boolean;
  /** For rules that are formulas; its sizes are those of the rules then. */
  readonly chart: SizeChart | undefined;
  /** The base as the caller or the pattern has it; otherwise the sheet says it. */
  readonly base: string | undefined;
  /** Named rules that the sheet may use. */
  readonly namedRules?: { readonly text: string; readonly file: string } | undefined;
}

/** A piece that is graded. */
export interface RuledPiece {
  readonly plan: PiecePlan;
  /** Named rules that the pattern itself gives its points. */
  readonly ruleNames: ReadonlyMap<string, { readonly rule: string; readonly place: Place }>;
}

/** What the rules of a sheet have in common. */
interface Context {
  readonly sheet: RuleSheet;
  readonly list: SizeList;
  readonly down: 1 | -1;
  readonly chart: SizeChart | undefined;
}

type AxisCells = Readonly<Record<Axis, readonly RuleCell[]>>;

/**
 * Reads the rules of a pattern. A rule has numbers for every size but the base. Throws InputError
 * `rule-missing` where it has not, and what `readRuleSheet`, `sizeList` and `axisMoves` throw.
 */
export function readRules(text: string, file: string, sources: RuleSources): GivenRules {
  const { pieces, chart, unit, base, namedRules } = sources;
  const library =
    namedRules &&
    readLibrary(namedRules.text, namedRules.file, { unit, base, sizes: chart?.sizes });
  const sheet = readRuleSheet(text, file, {
    plans: pieces.map(({ plan }) => plan),
    unit: sources.unit,
    sizes: chart?.sizes ?? library?.sizes,
    sizesOf: chart === undefined ? 'library' : 'chart',
    base: sources.base,
    shared: library?.named,
  });
  const stated = base ?? statedBy(sheet, 'base')?.text;
  if (library !== undefined) refuseOtherCount(sheet, library, stated);
  const list = sizeList(sheet, stated, ', or a chart');
  if (sources.countsUp === true) refuseSilentY(sheet);
  const context: Context = { sheet, list, down: statedDown(sheet), chart };
  const own = byPoint(sheet.cells);
  const ruleNamed = (name: string): GivenRule => {
    const axes: AxisCells = byPoint(sheet.named.get(name) ?? []).get('.') ?? { x: [], y: [] };
    return pointRule(axes, name, context);
  };
  // Rules of a library that this style does not use may need what it has not, such as a chart.
  const ownNames = [...sheet.named.keys()].filter((name) => library?.named.has(name) !== true);
  const named = new Map(ownNames.map((name) => [name, ruleNamed(name)]));
  const ruled = pieces.map(({ plan, ruleNames }) => {
    const rules = new Map<number, GivenRule>();
    plan.pointNames.forEach((name, i) => {
      // The handles of a spline follow its points.
      if (name.includes('.') && plan.handles.has(name)) return;
      const cells = own.get(`${plan.name}.${name}`);
      const use = ruleNames.get(name);
      if (cells !== undefined) {
        if (use !== undefined) refuseTwoRules(use, cells, sheet);
        rules.set(i, pointRule(cells, `${plan.name}.${name}`, context));
      } else if (use !== undefined) {
        const used = definedRule(sheet.named, { text: use.rule, place: use.place });
        rules.set(i, named.get(used) ?? ruleNamed(used));
      }
    });
    return rules;
  });
  const unread = [...unreadIn(sheet, ['base', 'sizes', 'y', 'blank']), ...(library?.unread ?? [])];
  return { file, typed: true, sizes: list.labels, base: list.base, ruled, unread };
}

/** Throws InputError `sheet-malformed` for moves along y where nothing says which way they count. */
function refuseSilentY(sheet: RuleSheet): void {
  if (statedBy(sheet, 'y') !== undefined) return;
  const cells = [...sheet.cells, ...[...sheet.named.values()].flat()];
  const moved = cells.find(
    ({ axis, mm, formula }) => axis === 'y' && (formula !== undefined || (mm ?? 0) !== 0),
  );
  if (moved === undefined) return;
  throw new InputError('sheet-malformed', {
    what: 'the pattern counts y upward, and the rule sheet does not say how it counts y',
    allowed: 'a line "# y: up" or "# y: down" in the rule sheet, too',
    got: moved.text,
    place: moved.places.cell,
  });
}

/** The rule that the cells of a point give; an axis of which nothing is told does not move. */
function pointRule(cells: AxisCells, name: string, context: Context): GivenRule {
  const { list, chart, down } = context;
  const [first] = [...cells.x, ...cells.y].toSorted(
    (a, b) => (a.places.cell.row ?? 0) - (b.places.cell.row ?? 0),
  );
  const place = first?.places.cell ?? {};
  if (![...cells.x, ...cells.y].some(isFilled)) refuseMissing(name, place, '');
  const along = (axis: Axis): readonly number[] => {
    if (!cells[axis].some(isFilled)) return list.labels.map(() => 0);
    return axisMoves(cells[axis], list, chart).map(
      (mm, size) => mm ?? refuseMissing(name, place, list.labels[size] ?? '', axis),
    );
  };
  const [x, y] = [along('x'), along('y')];
  refuseFar([...x, ...y], name, place);
  return {
    moves: x.map((dx, i) => point(dx, down * (y[i] ?? NaN))),
    text: { x: textOf(cells, 'x', context), y: textOf(cells, 'y', context) },
    place: { ...(place.file === undefined ? {} : { file: place.file }), row: place.row ?? 1 },
  };
}

function refuseFar(moves: readonly number[], name: string, { file, row }: Place): void {
  const far = moves.find((move) => !(Math.abs(move) <= MOST_MOVE));
  if (far === undefined) return;
  throw new InputError('rule-too-far', {
    what: 'the rule that begins here moves its point farther than any size needs',
    allowed: `up to ${MOST_MOVE} mm from the base along each axis`,
    got: `${trimmed(far, 3)} mm`,
    place: { ...(file === undefined ? {} : { file }), row: row ?? 1, point: name },
  });
}

function refuseMissing(name: string, place: Place, size: string, axis?: Axis): never {
  const { file, row } = place;
  throw new InputError('rule-missing', {
    what:
      axis === undefined
        ? 'the rule that begins here has no numbers'
        : `the rule that begins here has no number for d${axis} of size ${size}`,
    allowed: 'a number for every size but the base; blanks for zero below a line "# blank: 0"',
    place: {
      ...(file === undefined ? {} : { file }),
      ...(row === undefined ? {} : { row }),
      ...(size === '' ? {} : { size }),
      point: name,
    },
  });
}

/** Rows of the sheet go before a rule that the pattern names, unless the sheet has that rule too. */
function refuseTwoRules(
  { rule, place }: { readonly rule: string; readonly place: Place },
  { x, y }: AxisCells,
  { named }: RuleSheet,
): void {
  if (matchName(rule, [...named.keys()]) === undefined) return;
  throw new InputError('rule-twice', {
    what:
      `a point has two rules, ${rule} in the pattern (${inWords(place)}), ` +
      'and another one in the rule sheet, here',
    allowed: 'one rule a point',
    got: rule,
    place: [...x, ...y][0]?.places.cell ?? {},
  });
}

/** A formula, or a step for all sizes, as typed; nothing where every size has its own move. */
function textOf(cells: AxisCells, axis: Axis, { sheet: { unit } }: Context): string {
  if ([...cells.x, ...cells.y].some(({ size }) => size !== '')) return '';
  const [only] = cells[axis];
  if (only === undefined || only.mm === 0) return '0';
  const isPlain = only.mm !== undefined && /^[-+\d./ ]+$/u.test(only.text);
  return only.form === 'step' ? `${only.text}${isPlain ? ` ${unit}` : ''} a size` : only.text;
}
