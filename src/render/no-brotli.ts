/** In the place of the dictionary by which web fonts are packed: the fonts of the package are not. */
export default function unpacked(): never {
  throw new RangeError('a font of the package is packed for the web');
}
