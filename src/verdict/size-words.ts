/** Sizes of findings as a person says them. */

import { runsOf } from '../lists/runs';

/** The sizes of a finding's place: a label, `8-10` from one to another, or all for an empty one. */
export function sizesAt(place: string, labels: readonly string[]): readonly string[] {
  if (place === '') return labels;
  if (labels.includes(place)) return [place];
  for (let at = place.indexOf('-'); at >= 0; at = place.indexOf('-', at + 1)) {
    const ends = [place.slice(0, at), place.slice(at + 1)].map((end) => labels.indexOf(end));
    if (ends.includes(-1)) continue;
    return labels.slice(Math.min(...ends), Math.max(...ends) + 1);
  }
  return [place];
}

/** `Size 14 and up`, `Sizes 2, 6 to 10`, `All sizes`; empty where the range has but one size. */
export function sizeWords(sizes: readonly string[], labels: readonly string[]): string {
  const known = labels.map((label) => sizes.includes(label));
  const unknown = sizes.filter((size) => !labels.includes(size));
  if (unknown.length === 0 && !known.includes(false)) return labels.length < 2 ? '' : 'All sizes';
  const runs = runsOf(
    labels.filter((_, i) => known[i]),
    (label, last) => labels[labels.indexOf(label) - 1] === last,
  );
  const [first = []] = runs;
  if (runs.length === 1 && unknown.length === 0 && first.length > 1) {
    if (first.at(-1) === labels.at(-1)) return `Size ${first[0] ?? ''} and up`;
    if (first[0] === labels[0]) return `Up to size ${first.at(-1) ?? ''}`;
  }
  const told = [
    ...runs.flatMap((run) => (run.length > 2 ? [`${run[0] ?? ''} to ${run.at(-1) ?? ''}`] : run)),
    ...unknown,
  ];
  return `${sizes.length === 1 && unknown.length === 0 ? 'Size' : 'Sizes'} ${told.join(', ')}`;
}
