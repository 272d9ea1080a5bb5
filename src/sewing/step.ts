/** One step of sewing a garment: what is done, in words, and which edges it sews. */

/** An edge of a piece, by the name of its seam, or a dart by its own. */
export interface SewnEdge {
  readonly piece: string;
  readonly edge: string;
  /** The stretch above or below the end of the zip; the whole edge if absent. */
  readonly stretch?: 'above' | 'below';
}

/** What is done at once. An edge that a step sews, hems or neatens is not free for any later one. */
export interface SewingStep {
  readonly title: string;
  /** Sentences in the words of home sewing. */
  readonly words: readonly string[];
  readonly sews: readonly SewnEdge[];
  /** Pieces that are looked at besides those that are sewn. */
  readonly beside?: readonly string[];
  /** What is shown cut through: the vent, or the vent with its lining. */
  readonly section?: 'vent' | 'lined-vent';
}

/** The same edge of several pieces. */
export function edgesOf(
  pieces: readonly { readonly name: string }[],
  edge: string,
  stretch?: SewnEdge['stretch'],
): readonly SewnEdge[] {
  return pieces.map(({ name }) => ({
    piece: name,
    edge,
    ...(stretch === undefined ? {} : { stretch }),
  }));
}
