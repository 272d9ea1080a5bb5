/**
 * A graded pattern for exchange after ASTM D6673, unverified: a DXF file with a block for each piece
 * in the sample size, and the table of its grade rules.
 */
import { pointBounds } from '../geometry/bounds';
import type { Point } from '../geometry/point';
import { add, between, cross, dot, point, scale, subtract } from '../geometry/point';
import type { SeamPair } from '../pattern/seam-pair';
import { RULE_AT } from '../tolerance';
import { D6673_LAYERS } from './d6673-layers';
import { distinct, dxfDocument } from './document';
import {
  dxfInsert,
  dxfLine,
  dxfName,
  dxfNumber,
  dxfPoint,
  dxfPolyline,
  dxfWords,
} from './entities';
import type { ExchangePiece } from './exchange-piece';
import { followedPoints } from './followed-points';
import type { GradedPoint } from './graded-stretch';
import { placeIndex } from './place-index';
import type { RuleTable } from './rule-table';
import { sizeWords } from './rule-table';
import { joinless, seamWords } from './seam-words';
import { sewnNotchWords } from './sewn-notch';

/** A pattern in all sizes, ready to be written. */
export interface ExchangePattern {
  readonly title: string;
  /** Labels from the smallest to the largest. */
  readonly sizes: readonly string[];
  /** Place of the sample size. */
  readonly base: number;
  readonly pieces: readonly ExchangePiece[];
  /** What is sewn to what. */
  readonly seams: readonly SeamPair[];
}

/** Type size in mm of words, and of the numbers of rules and names of edges. */
const WORDS = 6;
const SMALL = 2;
/** mm between pieces on the sheet, and of a grade reference line. */
const APART = 50;
const REFERENCE = 50;

/** The file in parts. The rules that it numbers are in `rules` when it is at its end. */
export function* writeD6673(pattern: ExchangePattern, rules: RuleNumbers): Generator<string> {
  const { title, pieces, sizes, base, seams } = pattern;
  // The word by which the rule table lists it.
  const sample = sizeWords(sizes)[base] ?? '';
  const names = distinct(pieces.map(({ name }) => dxfName(name)));
  const layers = Object.values(D6673_LAYERS).map((name, i) => ({ name, color: (i % 6) + 1 }));
  yield* dxfDocument(
    layers,
    blocksOf(pieces, names, sample, base, rules),
    sheetOf(pieces, names, base, [
      `STYLE NAME: ${title}`,
      `SAMPLE SIZE: ${sample}`,
      'UNITS: METRIC',
      'ASTM D6673, UNVERIFIED, IN MILLIMETERS',
      ...seams.map(seamWords),
    ]),
  );
}

function* blocksOf(
  pieces: readonly ExchangePiece[],
  names: readonly string[],
  sample: string,
  base: number,
  rules: RuleNumbers,
) {
  for (const [i, piece] of pieces.entries()) {
    yield { name: names[i] ?? '', entities: pieceEntities(piece, sample, base, rules) };
  }
}

function* sheetOf(
  pieces: readonly ExchangePiece[],
  names: readonly string[],
  base: number,
  words: readonly string[],
) {
  let x = 0;
  for (const [i, piece] of pieces.entries()) {
    const box = pointBounds(placesOf(piece.boundary, base));
    yield dxfInsert('0', names[i] ?? '', point(x - box.left, 0));
    x += box.right - box.left + APART;
  }
  for (const [i, line] of words.entries()) {
    yield dxfWords(D6673_LAYERS.annotation, point(0, -APART - 2 * WORDS * i), WORDS, line);
  }
}

function placesOf(points: readonly GradedPoint[], base: number): readonly Point[] {
  return points.map(({ at }) => at[base] ?? point(0, 0));
}

function pieceEntities(
  piece: ExchangePiece,
  sample: string,
  base: number,
  rules: RuleNumbers,
): string {
  const { boundary, sewLine, notches, drillHoles, grain, fold, internalLines } = piece;
  const parts: string[] = [];
  const ruled = (layer: string, points: readonly GradedPoint[]): void => {
    for (const { at } of points) {
      const words = `# ${rules.numberOf(at, base, piece.ruleX)}`;
      parts.push(dxfWords(layer, at[base] ?? point(0, 0), SMALL, words));
    }
  };
  const isShared = sharedPlaces(piece, base);
  const outline = (layer: string, points: readonly GradedPoint[]): void => {
    parts.push(dxfPolyline(layer, placesOf(points, base), true));
    const followed = followedPoints(points, base, isShared);
    for (const found of points) {
      const kind = found.kind === 'turn' ? D6673_LAYERS.turnPoint : D6673_LAYERS.curvePoint;
      parts.push(dxfPoint(kind, found.at[base] ?? point(0, 0)));
      if (!followed.has(found)) ruled(kind, [found]);
    }
  };
  const line = (layer: string, points: readonly GradedPoint[]): void => {
    const [from, to] = placesOf(points, base);
    if (from === undefined || to === undefined) return;
    parts.push(dxfLine(layer, from, to));
    ruled(layer, points);
  };
  const spots = (layer: string, points: readonly GradedPoint[]): void => {
    for (const found of points) parts.push(dxfPoint(layer, found.at[base] ?? point(0, 0)));
    ruled(layer, points);
  };
  outline(D6673_LAYERS.boundary, boundary);
  if (sewLine !== undefined) outline(D6673_LAYERS.sewLine, sewLine);
  spots(D6673_LAYERS.notch, notches);
  spots(D6673_LAYERS.drillHole, drillHoles);
  line(D6673_LAYERS.grainLine, grain);
  line(D6673_LAYERS.mirrorLine, fold);
  for (const internal of internalLines) {
    parts.push(dxfPolyline(D6673_LAYERS.internalLine, placesOf(internal, base), false));
    ruled(D6673_LAYERS.internalLine, internal);
  }
  const box = pointBounds(placesOf(boundary, base));
  const middle = between(point(box.left, box.top), point(box.right, box.bottom), 0.5);
  const end = add(middle, scale(piece.ruleX, REFERENCE));
  parts.push(dxfLine(D6673_LAYERS.gradeReference, middle, end));
  const sewn = (at: GradedPoint): void => ruled(D6673_LAYERS.annotation, [at]);
  writeWords(piece, { sample, base, middle }, parts, sewn);
  return parts.join('');
}

/** The names of edges, what is to be known of notches, and the words on a piece. */
function writeWords(
  { names, notches, name, words }: ExchangePiece,
  on: { readonly sample: string; readonly base: number; readonly middle: Point },
  parts: string[],
  sewnAt: (sewn: GradedPoint) => void,
): void {
  const { sample, base, middle } = on;
  const said = (at: Point, height: number, text: string): void =>
    void parts.push(dxfWords(D6673_LAYERS.annotation, at, height, text));
  for (const { kind, name: own, at } of names) said(at, SMALL, `${kind}: ${joinless(own)}`);
  for (const [i, { at, marks, sewn }] of notches.entries()) {
    if (marks === 2) said(at[base] ?? middle, SMALL, 'DOUBLE NOTCH');
    if (sewn === undefined) continue;
    said(sewn.at[base] ?? middle, SMALL, sewnNotchWords(i + 1));
    sewnAt(sewn);
  }
  [`PIECE NAME: ${name}`, `SIZE: ${sample}`, ...words].forEach((text, i) =>
    said(point(middle.x, middle.y + 2 * WORDS * (i + 1)), WORDS, text),
  );
}

/** Tells of places at which a piece has several points that may have rules. */
function sharedPlaces(piece: ExchangePiece, base: number): (at: Point) => boolean {
  const { boundary, sewLine = [], notches, drillHoles, grain, fold, internalLines } = piece;
  const sewn = notches.flatMap((notch) => notch.sewn ?? []);
  const lines = [boundary, sewLine, notches, sewn, drillHoles, grain, fold, ...internalLines];
  const placesAt = placeIndex(
    lines.flatMap((line) => placesOf(line, base)),
    (at) => at,
    RULE_AT,
  );
  return (at) => placesAt(at).length > 1;
}

/** Numbers rules as they come: points that move alike share one. */
export interface RuleNumbers {
  /**
   * The number for the places of a point in every size, its moves counted along and square to
   * `ruleX`; a point that never moves has a rule too.
   */
  readonly numberOf: (at: readonly Point[], base: number, ruleX: Point) => number;
  readonly rules: RuleTable['rules'];
}

/** Rules without any number given yet; the first one is 1. */
export function ruleNumbers(): RuleNumbers {
  const numbers = new Map<string, number>();
  const rules = new Map<number, readonly Point[]>();
  return {
    rules,
    numberOf: (at, base, ruleX) => {
      const zero = at[base] ?? point(0, 0);
      const moves = at.map((place) => {
        const move = subtract(place, zero);
        return ruleX.x === 1 ? move : point(dot(ruleX, move), cross(ruleX, move));
      });
      let key = '';
      for (const { x, y } of moves) key += `${dxfNumber(x)} ${dxfNumber(y)};`;
      const known = numbers.get(key);
      if (known !== undefined) return known;
      const number = numbers.size + 1;
      numbers.set(key, number);
      rules.set(number, moves);
      return number;
    },
  };
}
