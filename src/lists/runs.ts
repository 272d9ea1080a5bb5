/** Lists parted where something changes from one item to the next. */

/** Items that follow one another, in runs; `goesOn` tells whether one goes on with the run that ends with `last`. */
export function runsOf<Item>(
  items: readonly Item[],
  goesOn: (one: Item, last: Item, run: readonly Item[]) => boolean,
): readonly (readonly Item[])[] {
  const runs: Item[][] = [];
  let last: { readonly item: Item; readonly run: Item[] } | undefined;
  for (const item of items) {
    const run = last !== undefined && goesOn(item, last.item, last.run) ? last.run : [];
    if (run.push(item) === 1) runs.push(run);
    last = { item, run };
  }
  return runs;
}
