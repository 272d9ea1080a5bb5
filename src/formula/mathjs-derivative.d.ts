/** mathjs exports the factory of its derivative, but does not declare it. */
declare module 'mathjs/number' {
  import type { FactoryFunction } from 'mathjs';

  export const createDerivative: FactoryFunction<unknown>;
}
