/** What a streamed run hangs on as one digest: what is asked for, and its list as far as it was read. */
import type { Hash } from 'node:crypto';
import { createHash } from 'node:crypto';
import type { FileHandle } from 'node:fs/promises';
import { InputError } from '../../errors';

/** Bytes that are read at once. */
const CHUNK = 1 << 20;

/**
 * The digest of `facts` and of the bytes of a file from one place to another, or to its end. It is read again, since a
 * list may be changed and keep its size and its time.
 */
export async function listDigest(
  facts: string,
  file: FileHandle,
  from: number,
  to: number,
): Promise<Hash> {
  const digest = createHash('sha256').update(facts);
  const chunk = new Uint8Array(CHUNK);
  for (let at = from; at < to;) {
    const { bytesRead } = await file.read(chunk, 0, Math.min(CHUNK, to - at), at);
    if (bytesRead === 0) break;
    digest.update(chunk.subarray(0, bytesRead));
    at += bytesRead;
  }
  return digest;
}

/** The digest as it is so far; more may be added to it. */
export function digestText(digest: Hash): string {
  return digest.copy().digest('hex');
}

/** Throws InputError `file-unreadable` for a list that was written to while it was read. */
export function refuseChanged(given: string): never {
  throw new InputError('file-unreadable', {
    what: 'the list was changed while it was read',
    allowed: 'a list that nothing is written to meanwhile',
    place: { file: given },
  });
}
