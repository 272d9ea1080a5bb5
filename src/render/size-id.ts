/** Labels of sizes as identifiers. */

/**
 * One `size-...` identifier a label, in the same order: letters, digits, `_` and `-` only, and no
 * two alike. A label that is an identifier already keeps it whatever the others are.
 */
export function sizeIds(labels: readonly string[]): readonly string[] {
  const stems = labels.map((label) => label.replace(/[^A-Za-z0-9_-]+/g, '-'));
  const isOwn = (label: string, i: number): boolean =>
    label !== '' && label === stems[i] && labels.indexOf(label) === i;
  const used = new Set(labels.filter(isOwn));
  return labels.map((label, i) => {
    if (isOwn(label, i)) return `size-${label}`;
    const stem = stems[i] ?? '';
    let id = stem;
    for (let n = 2; id === '' || used.has(id); n++) id = `${stem}-${n}`;
    used.add(id);
    return `size-${id}`;
  });
}
