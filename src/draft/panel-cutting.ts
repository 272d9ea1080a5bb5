/** How the panels are cut: the front once on the fold, the back as a pair for its center seam. */
import type { Cutting } from '../pattern/piece';

/** How one panel is cut from the shell. */
export function panelCutting(panel: 'front' | 'back'): readonly Cutting[] {
  const onFold = panel === 'front';
  return [{ cloth: 'shell', count: onFold ? 1 : 2, onFold }];
}
