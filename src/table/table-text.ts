/** The bytes of a table as text, in the encodings in which spreadsheet programs save one. */

/** Byte order marks (Unicode Standard, section 23.8). */
const MARKS = [
  { bytes: 'efbbbf', encoding: 'utf-8' },
  { bytes: 'fffe', encoding: 'utf-16le' },
  { bytes: 'feff', encoding: 'utf-16be' },
] as const;

/** Bytes looked at where no mark says the encoding. */
const LOOKED_AT = 4096;

/**
 * Text by its byte order mark; without one UTF-16 where every other byte is mostly zero, UTF-8 where
 * the bytes are such, which other text hardly ever is by chance, and Windows-1252 otherwise.
 */
export function decodedTable(bytes: Uint8Array): string {
  const start = Array.from(bytes.subarray(0, 3), hexadecimal).join('');
  const mark = MARKS.find((one) => start.startsWith(one.bytes));
  const wide = mark?.encoding ?? wideEncoding(bytes);
  if (wide !== undefined && wide !== 'utf-8') return new TextDecoder(wide).decode(bytes);
  try {
    return new TextDecoder('utf-8', { fatal: true }).decode(bytes);
  } catch {
    // In one go Node 20 would take it for ISO 8859-1; as a stream it does not.
    return new TextDecoder('windows-1252').decode(bytes, { stream: true });
  }
}

function hexadecimal(byte: number): string {
  return byte.toString(16).padStart(2, '0');
}

/** The digits, delimiters and line ends of a table have a zero byte beside them in UTF-16. */
function wideEncoding(bytes: Uint8Array): 'utf-16le' | 'utf-16be' | undefined {
  const start = bytes.subarray(0, LOOKED_AT);
  const pairs = Math.floor(start.length / 2);
  const zeros = [0, 0];
  start.forEach((byte, i) => {
    if (byte === 0) zeros[i % 2] = (zeros[i % 2] ?? 0) + 1;
  });
  const [first = 0, second = 0] = zeros;
  if (pairs < 2 || Math.max(first, second) < pairs / 2) return undefined;
  if (first === 0) return 'utf-16le';
  return second === 0 ? 'utf-16be' : undefined;
}
