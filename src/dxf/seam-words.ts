/**
 * What is sewn to what, as words in an exchange file. ASTM D6673 carries no relations between pieces;
 * these annotations are a convention of our own, which others may pass over.
 */
import type { Place } from '../errors';
import type { SeamPair, SeamSide } from '../pattern/seam-pair';
import { easeOf, seamPair } from '../pattern/seam-pair';
import { readSide } from '../seams/read-seams';
import type { PiecePlan } from '../pattern/piece';
import { dxfNumber } from './entities';

/**
 * `SEWN: sleeve.cap TO front.armhole + back.armhole, EASE 20, WAY opposite`; ease in mm, which must be
 * known. `, NOTCHES left out` follows where those of one side belong to other seams than those of the
 * other.
 */
export function seamWords(pair: SeamPair): string {
  const {
    sides: [first, second],
    way,
    notches,
  } = pair;
  const ease = easeOf(pair, new Map());
  const eased = ease === 0 ? '' : `, EASE ${dxfNumber(ease)}`;
  const run = way === undefined ? '' : `, WAY ${way}`;
  const apart = notches === 'met' ? '' : `, NOTCHES ${notches}`;
  return `SEWN: ${sideWords(first)} TO ${sideWords(second)}${eased}${run}${apart}`;
}

function sideWords({ edges }: SeamSide): string {
  return edges
    .map(
      ({ piece, edge, back }) => `${joinless(piece)}.${joinless(edge)}${back ? ' reversed' : ''}`,
    )
    .join(' + ');
}

/** A name without the characters by which names are joined. */
export function joinless(name: string): string {
  return name.replace(/[.+]/gu, '_');
}

const SEWN =
  /^SEWN: (.+?) TO (.+?)(?:, EASE (-?[\d.]+))?(?:, WAY (same|opposite))?(, NOTCHES left out)?$/u;

/** Whether words are such. */
export function isSeamWords(words: string): boolean {
  return SEWN.test(words);
}

/** Reads such words; undefined for others. Throws InputError `edge-unknown`. */
export function readSeamWords(
  words: string,
  plans: readonly PiecePlan[],
  place: Place,
): SeamPair | undefined {
  const [, first, second, ease = '0', way, apart] = SEWN.exec(words) ?? [];
  if (first === undefined || second === undefined) return undefined;
  const side = (text: string): SeamSide => readSide({ text, place }, plans);
  return seamPair(`${first} to ${second}`, [side(first), side(second)], {
    ease: Number(ease),
    way: way === 'same' || way === 'opposite' ? way : undefined,
    notches: apart === undefined ? 'met' : 'left out',
  });
}
