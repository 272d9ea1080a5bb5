/** By which rules a size of a chart fits a body, in a style. */
import type { SizeChart } from '../chart/size-chart';
import { findRow } from '../chart/size-chart';
import { both, marketValue } from '../draft/market-value';
import { InputError } from '../errors';
import { draftRange } from '../jobs/draft-range';
import type { GradeRequest } from '../jobs/requests';
import { lengthWithUnit } from '../table/length-with-unit';
import type { LengthUnit } from '../units';
import type { FitRules } from './fit';

/** What may be asked of a fit, as texts. */
export interface FitRequest extends Pick<GradeRequest, 'style' | 'set'> {
  /** How far a body may be off at waist and hip, with their units. */
  readonly waistTolerance?: string;
  readonly hipTolerance?: string;
  /** How much the cloth gives, such as `5%`. */
  readonly give?: string;
}

/** A size by its body, in mm. */
export interface SizeBody {
  readonly label: string;
  readonly waist: number;
  readonly hip: number;
}

/** The bodies of the sizes of a chart. */
export function sizeBodies(chart: SizeChart): readonly SizeBody[] {
  const girth = (name: string, i: number): number => findRow(chart, name)?.values[i] ?? NaN;
  return chart.sizes.map((label, i) => ({
    label,
    waist: girth('waist_girth', i),
    hip: girth('hip_girth', i),
  }));
}

/** Our own choice, no source: about half of a usual step at the waist; a hip hangs looser. */
const WAIST_TOLERANCE = both('2 cm', '3/4 in');
const HIP_TOLERANCE = both('4 cm', '1 1/2 in');

/**
 * The rules of a chart: the ease of the style in its middle size, and the tolerances asked for. Throws
 * InputError as `draftRange` does, and `bad-option`.
 */
export function fitRules(
  chart: SizeChart,
  { style, set, waistTolerance, hipTolerance, give }: FitRequest,
): { readonly rules: FitRules; readonly style: string } {
  const middle = Math.floor(chart.sizes.length / 2);
  const drafted = draftRange(chart, middle, {
    ...(style === undefined ? {} : { style }),
    ...(set === undefined ? {} : { set }),
  });
  const ease = (name: string): number => drafted.sizes[middle]?.draft.parameters.get(name) ?? 0;
  const share = giveOf(give);
  const { unit } = chart;
  const waist = waistTolerance ?? marketValue(WAIST_TOLERANCE, unit);
  const hip = hipTolerance ?? marketValue(HIP_TOLERANCE, unit);
  return {
    style: drafted.style.name,
    rules: {
      waist: {
        ease: ease('waist_ease'),
        tolerance: lengthOf(waist, unit, 'waistTolerance'),
        give: share,
      },
      hip: { ease: ease('hip_ease'), tolerance: lengthOf(hip, unit, 'hipTolerance'), give: share },
    },
  };
}

/** mm. Throws InputError `bad-option` for what is no length above zero. */
function lengthOf(text: string, unit: LengthUnit, field: string): number {
  const length = lengthWithUnit(text, unit, field);
  if (length !== undefined && length > 0 && length <= MOST_TOLERANCE) return length;
  throw new InputError('bad-option', {
    what: 'the tolerance is not usable',
    allowed: 'a length above 0 and up to 20 cm with its unit, such as 2cm or 3/4in',
    got: text,
    place: { field },
  });
}

/** mm; a body that is further off is no such size. The engine's own figure. */
const MOST_TOLERANCE = 200;

/** `5%` as a share. Throws InputError `bad-option`. */
function giveOf(text: string | undefined): number {
  if (text === undefined) return 0;
  const match = /^\s*(\d{1,3}(?:\.\d+)?)\s*(?:%|percent)\s*$/iu.exec(text);
  const share = match === null ? NaN : Number(match[1]) / 100;
  if (share >= 0 && share <= 1) return share;
  throw new InputError('bad-option', {
    what: 'the give of the cloth is not usable',
    allowed: '0% to 100%, such as 5%',
    got: text,
    place: { field: 'give' },
  });
}
