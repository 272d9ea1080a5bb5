/** What changed, in sentences: what came and what went, then for each piece or measure the largest change. */
import { grouped } from '../../lists/grouped';
import { counted } from '../../table/counted';
import type { VersionRow } from './facts';

/** Sentences of the rows, in their order; numbers of sizes that came or went are not told one by one. */
export function factWords(rows: readonly VersionRow[]): readonly string[] {
  const sizes = new Set(rows.filter(({ of }) => of === 'size').map(({ name }) => name));
  const told = rows.filter(({ size }) => !sizes.has(size));
  return [...grouped(told, ({ of }) => of)].flatMap(([of, own]) => {
    const things = [...grouped(own, ({ name }) => name)];
    const came = things.filter(([, all]) => all.every(({ before }) => before === ''));
    const went = things.filter(([, all]) => all.every(({ after }) => after === ''));
    const others = things
      .filter((thing) => !came.includes(thing) && !went.includes(thing))
      .flatMap(([, all]) => all);
    return [
      ...(came.length > 0 ? [`${plural(of)} added: ${named(came)}.`] : []),
      ...(went.length > 0 ? [`${plural(of)} gone: ${named(went)}.`] : []),
      ...[...grouped(others, ({ name }) => name.replace(/\..*$/u, ''))].map(([of_, all]) =>
        changeWords(of_, all),
      ),
    ];
  });
}

/** A title and the like have no name but what they say. */
function named(things: readonly (readonly [string, readonly VersionRow[]])[]): string {
  const words = things.map(([name, [first]]) =>
    name === '' ? `${first?.before ?? ''}${first?.after ?? ''}` : name,
  );
  return words.join(', ');
}

function plural(of: string): string {
  const words = counted(2, of).slice(2);
  return `${words.charAt(0).toUpperCase()}${words.slice(1)}`;
}

/** `front: 3 points changed, most side_hip of 14: dx was 0.5 in, now 0.75 in.` */
function changeWords(group: string, rows: readonly VersionRow[]): string {
  const [first] = rows;
  if (first === undefined) return '';
  const most = rows.reduce((a, b) => (Math.abs(b.growth ?? 0) > Math.abs(a.growth ?? 0) ? b : a));
  const { of, name, size, value } = most;
  const wasAndIs = `was ${most.before || 'nothing'}, now ${most.after || 'nothing'}`;
  const things = new Set(rows.map((row) => row.name)).size;
  const place = size === '' ? '' : ` of ${size}`;
  if (rows.length === 1)
    return name === '' ? `The ${of} ${wasAndIs}.` : `${name}: ${value}${place} ${wasAndIs}.`;
  const own = name === group ? '' : `${name.slice(group.length + 1)} `;
  const changed = name === group ? counted(rows.length, 'number') : counted(things, of);
  return `${group}: ${changed} changed, most ${own}${value}${place}: ${wasAndIs}.`;
}
