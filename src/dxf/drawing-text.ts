/** The bytes of a drawing as text. */
import { InputError } from '../errors';

/** Labels of the Encoding Standard for code pages that `windows-` does not name. */
const EAST: Readonly<Record<string, string | undefined>> = {
  932: 'shift_jis',
  936: 'gbk',
  949: 'euc-kr',
  950: 'big5',
};

/**
 * Text in UTF-8 where the bytes are such, which other text hardly ever is by chance; otherwise in the
 * code page that the header names, Windows-1252 if none. Throws InputError `dxf-malformed` for a code
 * page that is not known.
 */
export function decodedDrawing(bytes: Uint8Array, file: string): string {
  try {
    return new TextDecoder('utf-8', { fatal: true }).decode(bytes);
  } catch {
    // Windows-1252 has a character for every byte, so that the header can be read in it.
    // In one go Node 20 would take it for ISO 8859-1; as a stream it does not.
    const latin = new TextDecoder('windows-1252').decode(bytes, { stream: true });
    const page = /\$DWGCODEPAGE\s+3\s+(?:ANSI_)?(\w+)/iu.exec(latin)?.[1] ?? '1252';
    if (page === '1252') return latin;
    try {
      return new TextDecoder(EAST[page] ?? `windows-${page}`, { fatal: true }).decode(bytes);
    } catch {
      throw new InputError('dxf-malformed', {
        what: 'the characters of the file are neither UTF-8 nor of the code page that it names',
        allowed: 'UTF-8, or a $DWGCODEPAGE such as ANSI_1252',
        got: page,
        place: { file },
      });
    }
  }
}
