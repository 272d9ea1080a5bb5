/** Files that leave the page: one by one, or as one zip. */
import type { Zippable } from 'fflate';
import { zipSync } from 'fflate';
import type { PageParts } from '../page-file';
import { PART_IDS, pageFile } from '../page-file';
import type { PageState } from '../state';
import type { TakenFile } from '../wish';

/** The earliest day that a zip can tell, so that the same files give the same bytes. */
const DAY = '1980-01-01T12:00:00';

/** Hands a file to whoever sits before the page. */
export function save(name: string, content: string | Uint8Array<ArrayBuffer>, type: string): void {
  const address = URL.createObjectURL(new Blob([content], { type }));
  const link = document.createElement('a');
  link.href = address;
  link.download = name;
  link.click();
  // The browser has taken it by then, and a page that is open for long should not keep all it gave.
  setTimeout(() => {
    URL.revokeObjectURL(address);
  }, 60_000);
}

/** Files packed into one. */
export function zipped(files: readonly TakenFile[]): Uint8Array<ArrayBuffer> {
  const entries: Zippable = {};
  for (const { name, bytes } of files) entries[name] = bytes;
  return Uint8Array.from(zipSync(entries, { mtime: DAY }));
}

/** This page with another state in it. */
export function pageWith(state: PageState): string {
  const text = (id: string): string => document.getElementById(id)?.textContent ?? '';
  const policy = document.querySelector<HTMLMetaElement>('meta[http-equiv]')?.content ?? '';
  const parts: PageParts = {
    policy,
    style: text(PART_IDS.style),
    app: text(PART_IDS.app),
    engine: text(PART_IDS.engine),
  };
  return pageFile(parts, state);
}

/** A name without its ending. */
export function stemOf(file: string): string {
  return file.replace(/\.[^.]*$/u, '');
}
