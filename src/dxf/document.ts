/** A DXF file around its entities. */

/** A block: a name, and its entities as text. */
export interface BlockText {
  readonly name: string;
  readonly entities: string;
}

/** A layer with its color number, 1 to 255. */
export interface DxfLayer {
  readonly name: string;
  readonly color: number;
}

/**
 * The text of a file, piece by piece, so that a long one need not be in memory at once. Blocks come
 * as they are made. Nothing in it depends on the clock.
 */
export function* dxfDocument(
  layers: readonly DxfLayer[],
  blocks: Iterable<BlockText>,
  entities: Iterable<string>,
): Generator<string> {
  yield '0\nSECTION\n2\nHEADER\n9\n$ACADVER\n1\nAC1009\n9\n$DWGCODEPAGE\n3\nANSI_1252\n0\nENDSEC\n';
  yield '0\nSECTION\n2\nTABLES\n0\nTABLE\n2\nLTYPE\n70\n2\n0\nLTYPE\n2\nCONTINUOUS\n70\n0\n';
  yield '3\nSolid line\n72\n65\n73\n0\n40\n0\n0\nLTYPE\n2\nDASHED\n70\n0\n3\nDashes of 6 mm\n';
  yield '72\n65\n73\n2\n40\n9\n49\n6\n49\n-3\n0\nENDTAB\n';
  yield `0\nTABLE\n2\nLAYER\n70\n${layers.length + 1}\n`;
  for (const { name, color } of [{ name: '0', color: 7 }, ...layers]) {
    yield `0\nLAYER\n2\n${name}\n70\n0\n62\n${color}\n6\nCONTINUOUS\n`;
  }
  yield '0\nENDTAB\n0\nTABLE\n2\nSTYLE\n70\n1\n0\nSTYLE\n2\nSTANDARD\n70\n0\n40\n0\n41\n1\n50\n0\n71\n0\n';
  yield '42\n2.5\n3\ntxt\n4\n\n0\nENDTAB\n0\nENDSEC\n0\nSECTION\n2\nBLOCKS\n';
  for (const { name, entities: inside } of blocks) {
    yield `0\nBLOCK\n8\n0\n2\n${name}\n70\n0\n10\n0\n20\n0\n30\n0\n3\n${name}\n`;
    yield inside;
    yield '0\nENDBLK\n8\n0\n';
  }
  yield '0\nENDSEC\n0\nSECTION\n2\nENTITIES\n';
  yield* entities;
  yield '0\nENDSEC\n0\nEOF\n';
}

/** Names told apart by a number where two would be one. */
export function distinct(names: readonly string[]): readonly string[] {
  const taken = new Set<string>();
  return names.map((name) => {
    let own = name;
    for (let n = 2; taken.has(own.toUpperCase()); n++) own = `${name}_${n}`;
    taken.add(own.toUpperCase());
    return own;
  });
}
