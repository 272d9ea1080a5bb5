/** The parameters of a style under headings, what designers change first on top. */

/** Names of parameters that stand together. */
export interface ParameterGroup {
  readonly heading: string;
  readonly names: readonly string[];
}

/** What a designer changes first, in this order: the engine's own choice. */
const FIRST = [
  ...['skirt_length', 'waist_ease', 'hip_ease', 'hem_taper', 'waist_finish', 'vent_length'],
  ...['front_darts', 'back_darts', 'dart_closing', 'lining'],
];

/** Each heading with the names that go under it, if no heading before took them. */
const HEADINGS: readonly (readonly [heading: string, names: RegExp])[] = [
  ['Allowances', /_allowance$|^corner_style$/u],
  ['Tolerances', /_tolerance$/u],
  ['Darts', /dart|_intake$|_take_up$/u],
  ['Ease', /_ease$|_room$/u],
  ['Lengths', /^waist_to_|^skirt_|^stature$|^stride_/u],
  ['Finish', /^(waist|band|facing|lining|zip|vent|tuck)_|^underlap$/u],
];
const REST = 'Side and hem';
const ORDER = ['Lengths', 'Ease', 'Darts', REST, 'Finish', 'Allowances', 'Tolerances'];

/** All the names, each once, under the headings that have any; in a group as they were given. */
export function parameterGroups(names: readonly string[]): readonly ParameterGroup[] {
  const headingOf = (name: string): string =>
    HEADINGS.find(([, pattern]) => pattern.test(name))?.[0] ?? REST;
  const others = names.filter((name) => !FIRST.includes(name));
  return [
    { heading: 'Changed first', names: FIRST.filter((name) => names.includes(name)) },
    ...ORDER.map((heading) => ({
      heading,
      names: others.filter((name) => headingOf(name) === heading),
    })),
  ].filter((group) => group.names.length > 0);
}
