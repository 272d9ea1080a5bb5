/** What a drawing has that was not read, by kind and layer. */
import { grouped } from '../lists/grouped';
import type { ReadingNote } from '../pattern/pattern';
import { D6673_LAYERS } from './d6673-layers';
import type { DxfEntity } from './entity';

/** Layers of which nothing may be lost: with it a shape that is cut or sewn is. */
const SHAPE: ReadonlySet<string> = new Set([
  D6673_LAYERS.boundary,
  D6673_LAYERS.sewLine,
  D6673_LAYERS.internalCutOut,
  D6673_LAYERS.mirrorLine,
]);
const KNOWN: ReadonlySet<string> = new Set(Object.values(D6673_LAYERS));

const ASIDE = ' IN PAPER SPACE';

/**
 * A note for each kind of entity on each layer, with its number and the row of the first. Lost rules
 * and lost parts of an outline or cut-out fail; other features are a warning; words, and what is on
 * layers that mean nothing here, a note, unless it is a closed line.
 */
export function unreadNotes(entities: readonly DxfEntity[], piece: string): readonly ReadingNote[] {
  const groups = grouped(entities, (own) => `${own.kind}\n${own.layer}\n${severityOf(own)}`);
  return [...groups.values()].map((group): ReadingNote => {
    const [first] = group.toSorted((a, b) => a.row - b.row) as [DxfEntity];
    const quoted = first.words === '' ? '' : ` (${first.words.slice(0, 40)})`;
    const named = NAMES[first.layer];
    return {
      severity: severityOf(first),
      check: 'left-out',
      piece,
      what:
        `${group.length} ${first.kind} on layer ${first.layer}` +
        `${named === undefined ? '' : `, ${named}`}, ` +
        `${group.length === 1 ? 'in' : 'the first in'} row ${first.row}${quoted}`,
    };
  });
}

function severityOf({ kind, layer, type, words, closed }: DxfEntity): ReadingNote['severity'] {
  if (kind.endsWith(ASIDE)) return 'note';
  // The fold has no rule of its own: its ends are points of the outline.
  if (type === 'TEXT') {
    if (!words.startsWith('#')) return 'note';
    return layer === D6673_LAYERS.mirrorLine ? 'warning' : 'fail';
  }
  if (SHAPE.has(layer)) return 'fail';
  return KNOWN.has(layer) || closed ? 'warning' : 'note';
}

/** What the layers are for, in words. */
const NAMES: Readonly<Record<string, string | undefined>> = Object.fromEntries(
  Object.entries(D6673_LAYERS).map(([name, layer]) => [
    layer,
    name.replace(/[A-Z]/gu, (capital) => ` ${capital.toLowerCase()}`),
  ]),
);
