/** Lists some of whose parts may be absent. */

/** The parts that there are; left out are those that are undefined, or false where their condition does not hold. */
export function present<Part>(parts: readonly (Part | undefined | false)[]): Part[] {
  return parts.filter((part) => part !== undefined && part !== false) as Part[];
}
