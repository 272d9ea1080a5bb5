/** What a number that does not fit speaks against a rule sheet, in nats. */

/**
 * Against a misfit of `off` where `usual` is nothing to wonder at. It grows ever slower, since a slip
 * of any size is one slip: a long tail, as of the distribution of Cauchy.
 */
export function misfit(off: number, usual: number): number {
  return Math.log1p((off / usual) ** 2);
}
