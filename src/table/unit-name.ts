/** Names and marks of the length units, as people write them. */
import type { LengthUnit } from '../units';
import { tidyText } from './tidy-text';

const NAMES: Readonly<Record<LengthUnit, RegExp>> = {
  in: /^(?:in|ins|inch|inches|["\u201C\u201D\u2033]|'{2}|\u2019{2}|\u2032{2})$/u,
  cm: /^(?:cms?|centimet(?:er|re)s?)$/u,
  mm: /^(?:mms?|millimet(?:er|re)s?)$/u,
};

/** `c.m`, `m. m`. */
const ABBREVIATED = /^([cm])\. ?m$/u;

/** The unit that `text` names, such as `in.`, `c.m.`, `″` or `Centimetres`; undefined if it names none. */
export function unitNamed(text: string): LengthUnit | undefined {
  const name = tidyText(text).toLowerCase().replace(/\.$/u, '').replace(ABBREVIATED, '$1m');
  if (NAMES.in.test(name)) return 'in';
  if (NAMES.cm.test(name)) return 'cm';
  return NAMES.mm.test(name) ? 'mm' : undefined;
}
