/** What the help of a command says of an option. */
import type { Option } from 'commander';

/** Its own words, what may be chosen, and what is taken without it. */
export function optionDescription({ description, argChoices, defaultValue }: Option): string {
  const choices = argChoices === undefined ? '' : `: ${inWords(argChoices)}`;
  const taken = typeof defaultValue === 'string' ? ` (${defaultValue})` : '';
  return `${description}${choices}${taken}`;
}

/** `in, cm or mm`. */
function inWords(choices: readonly string[]): string {
  return `${choices.slice(0, -1).join(', ')} or ${choices.at(-1) ?? ''}`;
}
