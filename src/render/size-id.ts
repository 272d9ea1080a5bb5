/** Labels of sizes as identifiers. */

/**
 * One `size-...` identifier a label, in the same order: letters, digits, `_` and `-` only, and no
 * two alike. A label that is an identifier already keeps it whatever the others are.
 */
export function sizeIds(labels: readonly string[]): readonly string[] {
  const plain = labels.map((label) => label.replace(/[^A-Za-z0-9_-]+/g, '-'));
  const used = new Set(labels.filter((label, i) => label === plain[i]));
  return labels.map((label, i) => {
    const stem = plain[i] ?? '';
    if (label === stem && labels.indexOf(label) === i) return `size-${stem}`;
    let id = stem;
    for (let n = 2; used.has(id) || id === ''; n++) id = `${stem}-${n}`;
    used.add(id);
    return `size-${id}`;
  });
}
