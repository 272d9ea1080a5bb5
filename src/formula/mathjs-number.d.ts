/** The number-only build of mathjs ships without types of its own; it offers a subset of mathjs. */
declare module 'mathjs/number' {
  export * from 'mathjs';
}
