/**
 * Waist and hip of a crowd as a cloud, the sizes as boxes over those whom they fit, the published tables as
 * lines. Everything is told by shape, dash and word, so that it reads in grey.
 */
import type { Point } from '../geometry/point';
import { point } from '../geometry/point';
import type { Scene, Shape, Stroke } from '../render/scene';
import { filled, polygon, polyline, rectangle } from '../render/scene';
import { INK, SOFT_INK } from '../render/size-style';
import { text, wrapped } from '../render/type';
import type { LengthDisplay, LengthUnit } from '../units';
import { UNIT_WORDS, fromMillimeters, toMillimeters, trimmed } from '../units';
import type { Crowd } from './coverage';
import type { CoveredRange } from './cover-chart';
import type { BivariateNormal } from './population';

/** What is drawn. */
export interface CoveragePicture {
  readonly title: string;
  /** What the cloud is, and what it is not. */
  readonly notes: readonly string[];
  readonly crowd: Crowd;
  readonly normal: BivariateNormal;
  readonly range: CoveredRange;
  readonly suggested?: CoveredRange | undefined;
  /** Lines, at most as many as there are dashes. */
  readonly tables: readonly CoveredRange[];
  readonly display: LengthDisplay;
}

/** mm on paper. */
const [WIDTH, HEIGHT, LEFT, TOP, RIGHT] = [190, 170, 22, 26, 76];
const [TITLE, WORDS, SMALL] = [6, 3.6, 3];
const DOT = 0.45;
const CLOUD = '#9aa3ad';
/** Bodies that are drawn at most; more would be a blot. */
const DRAWN = 1_500;
/** Standard deviations that the axes reach to either side. No tolerance: of what is drawn. */
const REACH = 3.2;

const DASHES: readonly (readonly number[])[] = [[], [4, 1.5], [1, 1], [6, 1.5, 1, 1.5], [2.5, 1]];

/** The picture as a sheet of its own. */
export function coveragePicture(picture: CoveragePicture): Scene {
  const { title, notes, range, suggested } = picture;
  const frame = frameOf(picture);
  const lines = notes.flatMap((words) => wrapped(words, SMALL, WIDTH + RIGHT));
  const shapes: Shape[] = [
    text(title, point(LEFT, 12), TITLE, { weight: 'bold' }),
    ...axes(frame, picture.display.unit),
    ...cloud(picture, frame),
    ...ellipses(picture.normal, frame),
    ...tableLines(picture.tables, frame),
    ...(suggested === undefined ? [] : boxes(suggested, frame, [1.2, 1.2])),
    ...boxes(range, frame, undefined),
    ...legend(picture),
    ...lines.map((line, i) =>
      text(line, point(LEFT, TOP + HEIGHT + 22 + i * 4.4), SMALL, { color: SOFT_INK }),
    ),
  ];
  return {
    title,
    width: LEFT + WIDTH + RIGHT,
    height: TOP + HEIGHT + 26 + lines.length * 4.4,
    shapes,
  };
}

/** From waist and hip in mm to a place on paper. */
interface Frame {
  readonly waist: readonly [least: number, most: number];
  readonly hip: readonly [least: number, most: number];
  readonly at: (waist: number, hip: number) => Point;
  readonly holds: (waist: number, hip: number) => boolean;
}

function frameOf({ normal, range, suggested }: CoveragePicture): Frame {
  const sizes = [...range.sizes, ...(suggested?.sizes ?? [])];
  const span = (girth: 'waist' | 'hip'): readonly [number, number] => {
    const { mean, sd } = normal[girth];
    const ends = sizes.flatMap((size) => {
      const { larger, smaller } = girth === 'waist' ? size.waistTolerance : size.hipTolerance;
      return [size[girth] - smaller, size[girth] + larger];
    });
    return [Math.min(mean - REACH * sd, ...ends) - 10, Math.max(mean + REACH * sd, ...ends) + 10];
  };
  const [waist, hip] = [span('waist'), span('hip')];
  const along = ([least, most]: readonly [number, number], mm: number): number =>
    (mm - least) / (most - least);
  const isIn = ([least, most]: readonly [number, number], mm: number): boolean =>
    mm >= least && mm <= most;
  return {
    ...{ waist, hip },
    at: (w, h) => point(LEFT + WIDTH * along(waist, w), TOP + HEIGHT * (1 - along(hip, h))),
    holds: (w, h) => isIn(waist, w) && isIn(hip, h),
  };
}

/** Ticks every 10 cm or 4 in, or half of that on a short axis. */
function axes({ waist, hip, at }: Frame, unit: LengthUnit): readonly Shape[] {
  const hair: Stroke = { color: SOFT_INK, width: 0.15 };
  const step = toMillimeters(unit === 'in' ? 4 : unit === 'cm' ? 10 : 100, unit);
  const ticks = ([least, most]: readonly [number, number]): readonly number[] =>
    Array.from({ length: Math.floor((most - least) / step) + 2 }, (_, i) => {
      return (Math.ceil(least / step) + i) * step;
    }).filter((mm) => mm <= most);
  const show = (mm: number): string => trimmed(fromMillimeters(mm, unit), 1);
  const [w, h] = [waist[0], hip[0]];
  const corner = { left: LEFT, top: TOP, right: LEFT + WIDTH, bottom: TOP + HEIGHT };
  return [
    rectangle('frame', corner, { color: INK, width: 0.3 }),
    ...ticks(waist).flatMap((mm) => [
      polyline('tick', [at(mm, h), point(at(mm, h).x, TOP + HEIGHT + 1.5)], hair),
      text(show(mm), point(at(mm, h).x, TOP + HEIGHT + 6), WORDS, { anchor: 'middle' }),
    ]),
    ...ticks(hip).flatMap((mm) => [
      polyline('tick', [at(w, mm), point(LEFT - 1.5, at(w, mm).y)], hair),
      text(show(mm), point(LEFT - 2.5, at(w, mm).y + 1.2), WORDS, { anchor: 'end' }),
    ]),
    text(
      `waist of the body, ${UNIT_WORDS[unit]}`,
      point(LEFT + WIDTH / 2, TOP + HEIGHT + 12),
      WORDS,
      {
        anchor: 'middle',
      },
    ),
    text(`hip of the body, ${UNIT_WORDS[unit]}`, point(LEFT - 13, TOP + HEIGHT / 2), WORDS, {
      anchor: 'middle',
      rotation: -90,
    }),
  ];
}

/** Measured bodies, or as many that are drawn evenly from the normal. */
function cloud({ crowd, normal }: CoveragePicture, frame: Frame): readonly Shape[] {
  const bodies = crowd.kind === 'bodies' ? evenly(crowd.bodies) : drawn(normal);
  return bodies
    .filter(({ waist, hip }) => frame.holds(waist, hip))
    .map(({ waist, hip }) => {
      const { x, y } = frame.at(waist, hip);
      const corners = [point(x, y - DOT), point(x + DOT, y), point(x, y + DOT), point(x - DOT, y)];
      return filled('body', corners, CLOUD);
    });
}

function evenly<Body>(bodies: readonly Body[]): readonly Body[] {
  const every = Math.ceil(bodies.length / DRAWN);
  return bodies.filter((_, i) => i % every === 0);
}

/** Bodies of the normal by a sequence that fills the plane evenly, so that the picture is the same each time. */
function drawn({ waist, hip, r }: BivariateNormal) {
  return Array.from({ length: DRAWN }, (_, i) => {
    const [u, v] = [radical(i + 1, 2), radical(i + 1, 3)];
    const radius = Math.sqrt(-2 * Math.log(u));
    const [a, b] = [radius * Math.cos(2 * Math.PI * v), radius * Math.sin(2 * Math.PI * v)];
    return {
      waist: waist.mean + waist.sd * a,
      hip: hip.mean + hip.sd * (r * a + Math.sqrt(1 - r * r) * b),
    };
  });
}

/** The digits of a number in a base, read backward as a fraction (van der Corput). */
function radical(index: number, base: number): number {
  let [value, digit] = [0, 1];
  for (let rest = index; rest > 0; rest = Math.floor(rest / base)) {
    digit /= base;
    value += digit * (rest % base);
  }
  return value;
}

/** The ellipses that hold half and nine tenths of the normal. */
function ellipses({ waist, hip, r }: BivariateNormal, frame: Frame): readonly Shape[] {
  return [0.5, 0.9].map((share) => {
    const radius = Math.sqrt(-2 * Math.log(1 - share));
    const points = Array.from({ length: 72 }, (_, i) => {
      const angle = (i * Math.PI) / 36;
      const [a, b] = [radius * Math.cos(angle), radius * Math.sin(angle)];
      return frame.at(
        waist.mean + waist.sd * a,
        hip.mean + hip.sd * (r * a + Math.sqrt(1 - r * r) * b),
      );
    });
    return polygon('ellipse', points, { color: SOFT_INK, width: 0.25, dash: [0.8, 1.2] });
  });
}

function boxes(
  { sizes }: CoveredRange,
  { at }: Frame,
  dash: readonly number[] | undefined,
): readonly Shape[] {
  return sizes.flatMap(({ label, waist, hip, waistTolerance, hipTolerance }) => {
    const low = at(waist - waistTolerance.smaller, hip - hipTolerance.smaller);
    const high = at(waist + waistTolerance.larger, hip + hipTolerance.larger);
    const box = { left: low.x, top: high.y, right: high.x, bottom: low.y };
    const stroke = { color: INK, width: 0.45, ...(dash === undefined ? {} : { dash }) };
    const below = dash !== undefined;
    const name = below
      ? text(label, point(high.x - 0.6, low.y - 0.8), SMALL, { anchor: 'end', color: SOFT_INK })
      : text(label, point(low.x + 0.6, high.y + 3), SMALL, { weight: 'bold' });
    return [rectangle('size', box, stroke), name];
  });
}

function tableLines(tables: readonly CoveredRange[], frame: Frame): readonly Shape[] {
  return tables.slice(0, DASHES.length).flatMap(({ sizes }, i) => {
    const inside = sizes.filter(({ waist, hip }) => frame.holds(waist, hip));
    if (inside.length < 2) return [];
    const points = inside.map(({ waist, hip }) => frame.at(waist, hip));
    return [polyline('table', points, strokeOf(i))];
  });
}

function strokeOf(rank: number): Stroke {
  const dash = DASHES[rank] ?? [];
  return { color: INK, width: 0.55, ...(dash.length === 0 ? {} : { dash }) };
}

function legend({ tables, crowd, suggested }: CoveragePicture): readonly Shape[] {
  const x = LEFT + WIDTH + 5;
  let y = TOP + 4;
  const rows: Shape[] = [];
  const row = (sample: (at: Point) => Shape, words: string): void => {
    const parts = wrapped(words, SMALL, RIGHT - 24);
    rows.push(sample(point(x, y - 1)));
    for (const part of parts) {
      rows.push(text(part, point(x + 14, y), SMALL));
      y += 4.2;
    }
    y += 1.6;
  };
  const box = (dash?: readonly number[]) => (at: Point) =>
    rectangle(
      'size',
      { left: at.x, top: at.y - 2, right: at.x + 10, bottom: at.y + 2 },
      { color: INK, width: 0.45, ...(dash === undefined ? {} : { dash }) },
    );
  const line =
    (part: string, stroke: Stroke) =>
    (at: Point): Shape =>
      polyline(part, [at, point(at.x + 11, at.y)], stroke);
  row(
    ({ x: left, y: top }) =>
      filled(
        'body',
        [
          point(left + 5, top - 1),
          point(left + 6, top),
          point(left + 5, top + 1),
          point(left + 4, top),
        ],
        CLOUD,
      ),
    crowd.kind === 'bodies' ? 'a measured body' : 'a body drawn from the normal, not measured',
  );
  row(
    line('ellipse', { color: SOFT_INK, width: 0.25, dash: [0.8, 1.2] }),
    'half, and nine tenths, of the normal',
  );
  row(box(), 'a size: the bodies that it fits');
  if (suggested !== undefined) row(box([1.2, 1.2]), 'a size of the range proposed');
  tables.slice(0, DASHES.length).forEach(({ name }, i) => {
    row(line('table', strokeOf(i)), name);
  });
  return rows;
}
