/** What shapes are laid in: open cloth, or a panel or two of folded cloth, all as wide. */
export interface Lanes {
  /** mm across each that shapes may take. */
  readonly width: number;
  readonly count: number;
}
