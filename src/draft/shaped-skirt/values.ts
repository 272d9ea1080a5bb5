/** Named values of a panel, and formulas that are written once for every dart. */
import type { PointDefinition, ValueDefinition } from '../block';

/** A length of a panel, in mm. */
export function lengthValue(name: string, formula: string): ValueDefinition {
  return { name, quantity: 'length', formula };
}

/** A plain number of a panel: an angle in radians, a slope, a share. */
export function numberValue(name: string, formula: string): ValueDefinition {
  return { name, quantity: 'number', formula };
}

/**
 * Definitions of one dart: `@` stands for the dart's name and an underscore, so that `@x` of
 * `inner_dart` is `inner_dart_x`.
 */
export function ofDart<D extends ValueDefinition | PointDefinition>(
  dart: string,
  definitions: readonly D[],
): readonly D[] {
  return definitions.map(
    (definition) =>
      Object.fromEntries(
        Object.entries(definition).map(([key, value]) => [
          key,
          typeof value === 'string' ? value.replaceAll('@', `${dart}_`) : value,
        ]),
      ) as unknown as D,
  );
}
