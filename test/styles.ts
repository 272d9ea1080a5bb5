/** The styles of the engine by name, for tests of every one of them. */
import { STYLES } from '../src/index';

export const STYLE_NAMES: readonly string[] = STYLES.map(({ name }) => name);

/** Those with a finish of the waist, and so with more pieces than the panels. */
export const SHAPED_NAMES: readonly string[] = STYLES.filter(({ block }) =>
  block.parameters.some(({ name }) => name === 'waist_finish'),
).map(({ name }) => name);
