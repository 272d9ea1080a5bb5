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
  const wide = markedEncoding(bytes) ?? wideEncoding(bytes);
  if (wide !== undefined && wide !== 'utf-8') return new TextDecoder(wide).decode(bytes);
  return utf8(bytes) ?? windows1252(bytes);
}

/** Whether a list is UTF-16 by its beginning. */
export function isWide(bytes: Uint8Array): boolean {
  return (markedEncoding(bytes) ?? wideEncoding(bytes) ?? 'utf-8') !== 'utf-8';
}

/**
 * Whole lines of a list that is no UTF-16. Each that is no UTF-8 is Windows-1252, so that nothing hangs on which lines
 * are read at once.
 */
export function decodedLines(bytes: Uint8Array): string {
  const whole = utf8(bytes);
  if (whole !== undefined) return whole;
  const lines: string[] = [];
  for (let start = 0; start < bytes.length;) {
    const end = bytes.indexOf(LINE_FEED, start) + 1 || bytes.length;
    const line = bytes.subarray(start, end);
    lines.push(utf8(line) ?? windows1252(line));
    start = end;
  }
  return lines.join('');
}

const LINE_FEED = 10;

/** Undefined for what is no UTF-8. */
function utf8(bytes: Uint8Array): string | undefined {
  try {
    return new TextDecoder('utf-8', { fatal: true }).decode(bytes);
  } catch {
    return undefined;
  }
}

function windows1252(bytes: Uint8Array): string {
  // In one go Node 20 would take it for ISO 8859-1; as a stream it does not.
  return new TextDecoder('windows-1252').decode(bytes, { stream: true });
}

function markedEncoding(bytes: Uint8Array) {
  const start = Array.from(bytes.subarray(0, 3), hexadecimal).join('');
  return MARKS.find((one) => start.startsWith(one.bytes))?.encoding;
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
