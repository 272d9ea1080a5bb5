/** The body increments that a rule sheet implies. */
import { InputError } from '../../errors';
import { axisMoves, byPoint } from '../../rule-sheet/axis-moves';
import { readRuleSheet, refuseOtherOrigin } from '../../rule-sheet/read-rule-sheet';
import type { RuleSheet } from '../../rule-sheet/rule-sheet';
import type { SizeList } from '../../rule-sheet/size-list';
import { sizeList } from '../../rule-sheet/size-list';
import type { AnswerKey } from '../mark/answer-key';
import { answerKey } from '../mark/answer-key';
import type { Convention } from '../mark/convention';
import { OWN_CONVENTION, inConvention } from '../mark/convention';
import type { Series } from '../mark/series';
import type { StatedConvention } from '../mark/stated-convention';
import { statedConvention } from '../mark/stated-convention';
import { QUARTER_METHOD } from '../../draft/default-style';
import { findStyle } from '../../draft/styles';
import type { GradeRequest } from '../../jobs/requests';
import type { PiecePlan } from '../../pattern/piece';
import type { Drafted, Grade } from '../../jobs/grade-result';
import { gradeUnchecked } from '../../jobs/grade-chart';
import type { UnreadText } from '../../table/unread';
import { unreadIn } from '../../table/unread';
import { SAME_PLACE } from '../../tolerance';
import { rulerOf } from './increment-intervals';
import type { Inferred, InferredSize, Rounding } from './inferred-sizes';
import { everyLengthShrinks, inferredSizes, squaresOf } from './inferred-sizes';
import { baseOf } from './sheet-base';
import { dartsNamed } from './sheet-darts';
import { STAND_IN_BASE, STAND_IN_CHART } from '../../jobs/stand-in';

/** A sheet, and what its reader knows of it. */
export interface InferRequest {
  /** Text of the sheet, CSV. */
  readonly sheet: string;
  /** Its name for messages. */
  readonly file?: string;
  /** The style whose points the sheet moves; the quarter method, `pencil`, if absent. */
  readonly style?: GradeRequest['style'];
  readonly set?: GradeRequest['set'];
  /** Base size; otherwise the size whose cells are all zero. */
  readonly base?: string;
  /** Zero of the pieces; otherwise stated by the sheet or recognized. */
  readonly zero?: string;
}

/** What a sheet tells of the bodies it was made for, as growth from its base size. */
export interface Inference {
  readonly sheet: RuleSheet;
  /** What stands beside its table, and that of a style file, and was not understood. */
  readonly unread: readonly UnreadText[];
  /** Name of the style whose rules were solved. */
  readonly style: string;
  readonly base: string;
  /** Measurements that the rules of the given points depend on. */
  readonly measurements: readonly string[];
  /** Measurements of the style that no given cell depends on. */
  readonly unseen: readonly string[];
  /** True where some rules hold at a base body only, for which a stand-in was taken. */
  readonly atStandIn: boolean;
  /** Zero of each piece as stated or recognized: one point, or two for the place halfway. */
  readonly zeros: ReadonlyMap<string, readonly string[]>;
  /** True where nothing states the direction of y, and all lengths would shrink if it ran down. */
  readonly upIsTaken: boolean;
  /** mm between the marks of the ruler on which all cells lie; undefined where they lie on none. */
  readonly mark: number | undefined;
  /** From the smallest hip, or whatever measurement is known, to the largest; the base among them. */
  readonly sizes: readonly InferredSize[];
}

/**
 * Solves, size by size, the rules of the style for the increments. Rules of the quarter method are
 * the same for every body; those of other styles are taken at a stand-in body, with
 * the darts that the points of the sheet name unless `set` says their number. Throws InputError for
 * a sheet that cannot be used.
 */
export function inferIncrements(request: InferRequest): Inference {
  const result = atStandIn(request);
  const sheet = readRuleSheet(request.sheet, request.file ?? 'sheet', {
    plans: result.range.plans,
    base: request.base,
  });
  const base = baseOf(sheet, request.base);
  refuseOtherOrigin(sheet, base);
  const list = sizeList(sheet, base);
  const key: AnswerKey = { ...answerKey(result), sizes: list.labels, base: list.base };
  // Where a skirt is lengthened lies between all sizes of its range, and tells nothing of a body.
  const between = lengthLineEnds(result.range.plans);
  const series = movesIn(sheet, list).filter(
    ({ piece, point }) => !between.has(`${piece}.${point}`),
  );
  refuseBlank(series, list, request.file ?? 'sheet');
  const stated = statedConvention(key, sheet, request.zero);
  const { convention, upIsTaken } = directionOf(key, series, stated);
  const mark = rulerOf(
    series.flatMap(({ given }) => given.filter((mm) => mm !== undefined)),
    sheet.unit,
  );
  const fit = inferredSizes(
    inConvention(key, convention),
    series,
    mark === undefined ? undefined : { mark, added: roundingsOf(sheet, list) },
  );
  return {
    sheet,
    unread: [
      ...result.pattern.unread,
      ...unreadIn(sheet, ['base', 'sizes', 'y', 'blank', 'zero', 'pieces']),
    ],
    style: result.range.draft.style.name,
    base,
    measurements: fit.measurements,
    unseen: result.range.draft.drafter.measurements.filter(
      (name) => !fit.measurements.includes(name),
    ),
    atStandIn: series.some((one) => !isLinear(result, one)),
    zeros: convention.zeros,
    upIsTaken,
    mark,
    sizes: smallestFirst(fit),
  };
}

/** A sheet to fill in tells nothing yet. */
function refuseBlank(series: readonly Series[], { base }: SizeList, file: string): void {
  const says = ({ given }: Series): boolean =>
    given.some((mm, size) => mm !== undefined && size !== base);
  if (series.some(says)) return;
  throw new InputError('sheet-malformed', {
    what: 'there is nothing to infer: every cell of the sheet is blank',
    allowed: 'a sheet with moves or steps of at least one point',
    place: { file },
  });
}

/** The style at the stand-in body, with as many darts as the sheet names where the style leaves that open. */
function atStandIn({
  sheet,
  file = 'sheet',
  style = QUARTER_METHOD,
  set,
}: InferRequest): Grade & Drafted {
  const { block } = typeof style === 'string' ? findStyle(style) : style.style;
  const named = Object.entries(dartsNamed(sheet, file)).filter(([name]) =>
    block.parameters.some((parameter) => parameter.name === name),
  );
  return gradeUnchecked({
    chart: STAND_IN_CHART,
    file: 'the stand-in chart',
    base: STAND_IN_BASE,
    style,
    set: { ...Object.fromEntries(named), ...set },
  });
}

function lengthLineEnds(plans: readonly PiecePlan[]): ReadonlySet<string> {
  return new Set(
    plans.flatMap((plan) =>
      plan.marks
        .filter(({ name }) => name === 'length-line' || name === 'hip-depth-line')
        .flatMap(({ through }) => through.map((point) => `${plan.name}.${point}`)),
    ),
  );
}

/** Every point and axis once, as moves; steps are added up where the moves are not given. */
function movesIn({ cells }: RuleSheet, list: SizeList): readonly Series[] {
  return [...byPoint(cells).values()].flatMap((axes) =>
    (['x', 'y'] as const).flatMap((axis): Series[] => {
      const [first] = axes[axis];
      if (first === undefined) return [];
      const { piece, point } = first;
      return [{ piece, point, axis, form: 'move', given: axisMoves(axes[axis], list, undefined) }];
    }),
  );
}

/** A move was rounded once, and steps as often as they were added up. */
function roundingsOf({ cells }: RuleSheet, { labels, base }: SizeList): Rounding['added'] {
  const moved = new Set(
    cells.flatMap(({ form, piece, point, axis, size }) =>
      form === 'move' ? [`${piece}.${point}.${axis}.${size}`] : [],
    ),
  );
  return ({ piece, point, axis }, size) =>
    [labels[size], ''].some((own) => moved.has(`${piece}.${point}.${axis}.${own}`))
      ? 1
      : Math.abs(size - base);
}

function smallestFirst({ measurements, sizes }: Inferred): readonly InferredSize[] {
  const k = Math.max(0, measurements.indexOf('hip_girth'));
  return [...sizes].sort((a, b) => (a.increments[k] ?? 0) - (b.increments[k] ?? 0));
}

/** The convention as stated, and y up where it is not stated and every length shrinks otherwise. */
function directionOf(
  key: AnswerKey,
  series: readonly Series[],
  stated: StatedConvention,
): { readonly convention: Convention; readonly upIsTaken: boolean } {
  const plain = conventionOf(key, series, stated);
  const own = inConvention(key, plain);
  const upIsTaken = stated.up === undefined && everyLengthShrinks(own, series);
  return {
    convention: upIsTaken ? conventionOf(key, series, { ...stated, up: true }) : plain,
    upIsTaken,
  };
}

/** The stated zero, or of each piece the still point from which its cells fit best. */
function conventionOf(
  key: AnswerKey,
  series: readonly Series[],
  { zero, up = false }: StatedConvention,
): Convention {
  const pieces = [...new Set(series.map(({ piece }) => piece))];
  const zeros = pieces.flatMap((piece): [string, readonly string[]][] => {
    const own = series.filter((one) => one.piece === piece);
    if (zero !== undefined)
      return zero.every((point) => key.points.has(`${piece}.${point}`)) ? [[piece, zero]] : [];
    const squaresFrom = (point: string | undefined): number => {
      const zeros = new Map(point === undefined ? [] : [[piece, [point]] as const]);
      return squaresOf(inConvention(key, { ...OWN_CONVENTION, zeros, up }), own);
    };
    const still = own
      .filter(({ given }) => given.every((mm) => Math.abs(mm ?? 0) <= SAME_PLACE))
      .map(({ point }) => point);
    let best: string | undefined;
    let least = squaresFrom(undefined) / 2;
    for (const point of new Set(least > SAME_PLACE ? still : [])) {
      const squares = squaresFrom(point);
      if (squares < least) [best, least] = [point, squares];
    }
    return best === undefined ? [] : [[piece, [best]]];
  });
  return { ...OWN_CONVENTION, zeros: new Map(zeros), up };
}

function isLinear({ range }: Grade & Drafted, { piece, point, axis }: Series): boolean {
  const p = range.plans.findIndex(({ name }) => name === piece);
  const k = range.plans[p]?.index.get(point) ?? -1;
  return range.draft.ruleFormulas[p]?.[k]?.[axis].kind === 'linear';
}
