/** Fields that are absent where nothing was given, as requests have them. */

/** The same values without those that are undefined. */
export function withoutUndefined<Values extends object>(
  values: Values,
): {
  [Key in keyof Values]: Exclude<Values[Key], undefined>;
} {
  return Object.fromEntries(Object.entries(values).filter(([, value]) => value !== undefined)) as {
    [Key in keyof Values]: Exclude<Values[Key], undefined>;
  };
}
