/** What a sheet is held against: a style drafted from a chart, or a given pattern with its own rules. */
import { unreadInChart } from '../../check/not-read';
import type { SizeChart } from '../../chart/size-chart';
import type { Point } from '../../geometry/point';
import { add, point, quarterTurn, scale } from '../../geometry/point';
import { moveOnPaper } from '../../given/grade-given';
import { draftedSizes } from '../../grade/graded-pattern';
import { gradeUnchecked } from '../../jobs/grade-chart';
import { gradePattern } from '../../jobs/grade-pattern';
import type { Drafted, Grade } from '../../jobs/grade-result';
import type { GradeRequest, PatternRequest } from '../../jobs/requests';
import type { PointName } from '../../pattern/named-point';
import type { Piece, PiecePlan } from '../../pattern/piece';
import type { UnreadText } from '../../table/unread';
import type { AnswerKey } from './answer-key';
import { answerKey, askedPoints, givenKey } from './answer-key';

/** A skirt drafted from a chart. */
export type DraftedCase = Pick<GradeRequest, 'chart' | 'file' | 'base' | 'style' | 'set'>;

/** A pattern that is there, and the rules that are right for it; with a chart where these are formulas. */
export type GivenCase = Pick<PatternRequest, 'pattern' | 'rules' | 'chart' | 'seams' | 'base'>;

/** One size as it is right. */
export interface RightSize {
  readonly label: string;
  readonly pieces: readonly Piece[];
  readonly parameters: ReadonlyMap<string, number>;
}

/** The right answers, and what they are of. */
export interface Reference {
  /** The file that the sizes and their growth come from: the chart, or the rule sheet. */
  readonly file: string;
  /** Such as `style pencil`, or `pattern base.csv`. */
  readonly of: string;
  readonly grade: Grade;
  readonly chart: SizeChart | undefined;
  readonly plans: readonly PiecePlan[];
  /** With the zero and the axes of the draft, or of the rules. */
  readonly key: AnswerKey;
  /** The point that is the zero of the key; empty where it is that of given rules. */
  readonly zero: string;
  /** Pieces that are asked for where none are named, and the points of each piece. */
  readonly pieces: readonly string[];
  readonly points: readonly PointName[];
  /** Exact, before any rounding. */
  readonly sizes: readonly RightSize[];
  /** A move along the axes of the key on the paper; y down. */
  readonly onPaper: (piece: string, move: Point) => Point;
  readonly unread: readonly UnreadText[];
}

/** Throws what grading throws. */
function draftedReference(request: DraftedCase): Reference {
  const grade: Grade & Drafted = gradeUnchecked(request);
  const { range, chart, pattern } = grade;
  return {
    file: chart.file,
    of: `style ${range.draft.style.name}`,
    grade,
    chart,
    plans: range.plans,
    key: answerKey(grade),
    zero: range.stackPoint,
    pieces: range.plans.filter(({ part }) => part === 'panel').map(({ name }) => name),
    points: range.plans.flatMap((plan) =>
      askedPoints(plan).map((name) => ({ piece: plan.name, point: name })),
    ),
    sizes: draftedSizes(range).map(({ label, draft, parameters }) => ({
      ...{ label, parameters },
      pieces: draft.pieces,
    })),
    onPaper: (_, move) => move,
    unread: [...pattern.unread, ...unreadInChart(chart)],
  };
}

/** Throws what grading throws. The rules are taken as right; `check` tells what is wrong with them. */
function givenReference(request: GivenCase): Reference {
  const grade = gradePattern(request, []);
  const { range, chart, pattern, rules } = grade;
  const pieces = new Map(pattern.pieces.map((piece) => [piece.base.plan.name, piece]));
  return {
    file: rules.file,
    of: `pattern ${pattern.file}`,
    grade,
    chart,
    plans: range.plans,
    key: givenKey(range, (piece, move) => {
      const { x, y } = pieces.get(piece)?.ruleX ?? point(1, 0);
      // The turn of `moveOnPaper`, the other way.
      return add(scale(point(x, -y), move.x), scale(quarterTurn(point(x, -y)), move.y));
    }),
    zero: '',
    pieces: range.plans.map(({ name }) => name),
    points: range.plans.flatMap((plan, p) =>
      [...(rules.ruled[p]?.keys() ?? [])].map((k) => ({
        ...{ piece: plan.name, point: plan.pointNames[k] ?? '' },
      })),
    ),
    sizes: range.sizes,
    onPaper: (piece, move) => {
      const own = pieces.get(piece);
      return own === undefined ? move : moveOnPaper(move, own);
    },
    unread: [...pattern.unread, ...rules.unread, ...(chart ? unreadInChart(chart) : [])],
  };
}

/** A request names either. */
export function referenceOf(request: DraftedCase | GivenCase): Reference {
  return 'pattern' in request ? givenReference(request) : draftedReference(request);
}
