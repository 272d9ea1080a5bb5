/** A body between sizes: its waist as one size of a chart has it, its hip as another. */
import { InputError } from '../errors';
import { matchSize } from '../table/name-match';
import { checkSizeLabel } from '../table/size-label';
import { excerpt } from '../table/tidy-text';
import type { SizeChart } from './size-chart';
import { recognizeMeasurement } from './vocabulary';

/** What of a body may be chosen by itself. */
type Part = 'waist' | 'hip' | 'length';

/** The measurement by whose names a part is called, in the order in which a blend is named. */
const PARTS: Readonly<Record<Part, string>> = {
  waist: 'waist_girth',
  hip: 'hip_girth',
  length: 'skirt_length',
};

/** Rows that follow the length; the waist is one row alone, and all others follow the hip. */
export const BLEND_LENGTHS: readonly string[] = [
  ...['skirt_length', 'waist_to_knee', 'stature', 'waist_height', 'hip_height', 'knee_height'],
  ...['crotch_height', 'inside_leg_length', 'outside_leg_length'],
];

const ALLOWED =
  'a size for the waist and one for the hip, such as `waist 12, hip 16`, and if wanted one for the ' +
  'length: `length 14`';

/** A size that is put together from sizes of a chart. */
export interface Blend {
  /** Its parts as the chart spells their sizes: `waist 12, hip 16`. */
  readonly label: string;
  /** The size that each part is taken from. */
  readonly from: ReadonlyMap<Part, string>;
}

/**
 * Reads parts such as `waist 12`, `hip 16`, `length 14`, in any order. Throws InputError `bad-option`
 * for a part that is none, is there twice, or lacks, `size-unknown` for a size that the chart has not,
 * and `size-twice` where the chart has a size of the blend's name.
 */
export function readBlend(parts: readonly string[], chart: SizeChart): Blend {
  const from = new Map<Part, string>();
  for (const typed of parts) {
    const [part, size] = readPart(typed, chart);
    if (from.has(part)) throw refused(`the blend has ${part} twice`, 'each part once', parts);
    from.set(part, size);
  }
  const lacking = (['waist', 'hip'] as const).find((part) => !from.has(part));
  if (lacking !== undefined) {
    throw refused(`the blend does not say which size its ${lacking} has`, ALLOWED, parts);
  }
  const label = named()
    .flatMap((part) => (from.has(part) ? [`${part} ${from.get(part) ?? ''}`] : []))
    .join(', ');
  checkSizeLabel(label, { field: 'blend' });
  if (chart.sizes.includes(label)) {
    throw new InputError('size-twice', {
      what: 'the chart has a size of the name that the blend would have',
      allowed: 'a name of its own for each size',
      got: label,
      place: { field: 'blend', file: chart.file },
    });
  }
  return { label, from };
}

/**
 * The chart with the blend as one more size, behind the others: the row of the waist from the size of
 * the waist, `BLEND_LENGTHS` from that of the length (the hip's where none is named), all other rows
 * from that of the hip. Cells keep their places in the file.
 */
export function withBlend(chart: SizeChart, { label, from }: Blend): SizeChart {
  const placeOf = (name: string): number =>
    chart.sizes.indexOf(from.get(partOf(name)) ?? from.get('hip') ?? '');
  const rows = chart.rows.map((row) => {
    const place = placeOf(row.name);
    return {
      ...row,
      values: [...row.values, row.values[place] ?? null],
      cells: [...row.cells, row.cells[place] ?? ''],
      places: [...row.places, ...row.places.slice(place, place + 1)],
    };
  });
  return { ...chart, sizes: [...chart.sizes, label], rows };
}

function readPart(typed: string, { sizes, file }: SizeChart): readonly [Part, string] {
  const { name = '', size = '' } = /^(?<name>\S+?)(?:\s*[:=]\s*|\s+)(?<size>.+)$/u.exec(
    typed.trim(),
  )?.groups ?? { name: typed };
  const meant = recognizeMeasurement(name)?.name;
  const part = named().find((own) => PARTS[own] === meant);
  if (part === undefined) {
    throw refused(
      typed.trim() === '' ? 'a part of the blend is empty' : 'the blend has an unknown part',
      `${named().join(', ')}, each with a size, such as \`waist 12, hip 16\``,
      [typed],
    );
  }
  if (size === '') throw refused(`the ${part} of the blend has no size`, ALLOWED, [typed]);
  const known = matchSize(size, sizes);
  if (known !== undefined) return [part, known];
  throw new InputError('size-unknown', {
    what: `the range has no such size for the ${part} of the blend`,
    allowed: sizes.join(', '),
    got: excerpt(size),
    place: { field: 'blend', file },
  });
}

function partOf(name: string): Part {
  if (name === PARTS.waist) return 'waist';
  return BLEND_LENGTHS.includes(name) ? 'length' : 'hip';
}

function named(): readonly Part[] {
  return ['waist', 'hip', 'length'];
}

function refused(what: string, allowed: string, parts: readonly string[]): InputError {
  return new InputError('bad-option', {
    what,
    allowed,
    got: excerpt(parts.join(', ')),
    place: { field: 'blend' },
  });
}
