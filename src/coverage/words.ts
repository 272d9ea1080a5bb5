/** What a coverage rests on, in sentences for people. */
import { present } from '../lists/present';
import { counted } from '../table/counted';
import type { LengthDisplay } from '../units';
import { showLength, trimmed } from '../units';
import type { Change } from './changes';
import type { ChartCoverage, CoveredRange } from './cover-chart';
import type { LeftOut } from '../bodies/fit';
import { LEFT_OUT } from '../bodies/fit';
import type { Tails } from './population';

/** No tolerance: half of the last decimal that is told. */
const LEAST_TOLD = 0.0005;

/** A share as a person reads it. */
export function percentWords(share: number): string {
  return share > 0 && share < LEAST_TOLD ? 'under 0.1 %' : `${trimmed(100 * share, 1)} %`;
}

/** Why bodies are left out, in words that find no fault with them. */
const LEFT_OUT_WORDS: Readonly<Record<LeftOut, string>> = {
  below: 'smaller than the range in waist or hip',
  above: 'larger than the range in waist or hip',
  between: 'between two sizes',
  'fuller-hip': 'with more hip for their waist',
  'slimmer-hip': 'with less hip for their waist',
};

/** The share of all that finds a size. */
export function servedWords({ range, style }: ChartCoverage): string {
  const { sizes, coverage } = range;
  const found = sizes.length === 1 ? 'its size' : `one of its ${sizes.length} sizes`;
  return `${range.name}: ${percentWords(coverage.served)} find ${found}, style ${style}`;
}

/** Whom a size fits. */
export function rulesWords({ rules, range }: ChartCoverage, display: LengthDisplay): string {
  const [size] = range.sizes.slice(Math.floor(range.sizes.length / 2));
  const { waist, hip } = rules;
  const show = (mm: number | undefined): string => showLength(mm ?? NaN, display);
  return (
    `A size fits where the body's waist is at most ${show(size?.waistTolerance.larger)} larger or ` +
    `${show(size?.waistTolerance.smaller)} smaller than the size's own, and the hip at most ` +
    `${show(size?.hipTolerance.larger)} larger or ${show(size?.hipTolerance.smaller)} smaller: the ` +
    `tolerance, on the larger side no more than the ease (waist ${show(waist.ease)}, hip ${show(hip.ease)})` +
    (waist.give === 0 ? '' : ` and what the cloth gives, ${percentWords(waist.give)}`) +
    '. The tolerances are our own choice where none is asked for.'
  );
}

/** The shares of those who find no size, by why, without reasons that nobody has. */
export function leftOutWords({
  coverage,
}: CoveredRange): readonly { readonly share: number; readonly words: string }[] {
  return LEFT_OUT.map((why) => ({
    share: coverage.leftOut[why],
    words: LEFT_OUT_WORDS[why],
  })).filter(({ share }) => share > 0);
}

/** Who was measured, when, how, and what that leaves out. */
export function sourceNotes({ source, normal, byNormal, range }: ChartCoverage): readonly string[] {
  const limits =
    "A survey is of some people at some time, and nobody's body is wrong. Lengths, posture and taste are " +
    'not asked.';
  if ('bodies' in source) {
    const { file, bodies, setAside, weights } = source;
    return present([
      `${counted(bodies.length, 'body', 'bodies')} of ${file}, ` +
        (weights === undefined ? 'each counted once' : `weighted by ${weights}`) +
        setAsideWords(setAside) +
        `. Correlation of waist and hip ${trimmed(normal.r, 3)}.`,
      byNormal &&
        `The bivariate normal of these bodies would serve ${percentWords(byNormal.served)}, ` +
          `the bodies themselves ${percentWords(range.coverage.served)}.`,
      limits,
    ]);
  }
  const { title, sample, weighted, waistLevel, certainty, tails } = source;
  return [
    `${title}: ${sample} measured, ${weighted}, waist ${waistLevel} (${certainty}).`,
    `Taken as a bivariate normal. ${tailWords(tails)}`,
    limits,
  ];
}

/** Places that are told; the rest is counted. */
const TOLD = 6;

function setAsideWords(places: readonly string[]): string {
  if (places.length === 0) return '';
  const rest = places.length - TOLD;
  return (
    `; ${places.length} set aside, whose waist, hip or weight cannot be read or which are nobody, ` +
    `such as an average: ${places.slice(0, TOLD).join(', ')}${rest > 0 ? ` and ${rest} more` : ''}`
  );
}

function tailWords(tails: Tails | undefined): string {
  if (tails === undefined)
    return 'How far the people measured differ from it in the tails is not known.';
  const { waistAbove, waistBelow, hipAbove, hipBelow, outside } = tails;
  return (
    'Of the people measured ' +
    `${percentWords(waistAbove)} have a waist more than two standard deviations above the mean and ` +
    `${percentWords(waistBelow)} below, for the hip ${percentWords(hipAbove)} and ${percentWords(hipBelow)}, ` +
    `where a normal has 2.3 %; ${percentWords(outside)} lie outside of the ellipse that should leave out 10 %. ` +
    'So the normal has too few large bodies and too many small ones.'
  );
}

/** What a change does, as somebody would ask for it. */
export function changeWords({ kind, by, size, added }: Change, display: LengthDisplay): string {
  const length = showLength(Math.abs(by), display);
  const larger = by > 0 ? 'larger' : 'smaller';
  switch (kind) {
    case 'smaller-size':
    case 'larger-size':
      return `one more size ${size}`;
    case 'step':
      return `waist and hip ${length} ${larger} from size ${size} on`;
    case 'hips':
      return `all hips ${length} ${larger}`;
    case 'second-drop':
      return `the same waists once more with hips ${length} ${larger} (${added} more sizes)`;
  }
}
