/** How grave it is that two edges which are sewn together differ. */
import { SEAM_FAILURE, SEAM_MATCH, SEAM_WARNING } from '../tolerance';
import type { Severity } from './finding';

/** For a gap in mm. */
export function seamSeverity(gap: number): Severity {
  if (gap <= SEAM_MATCH) return 'ok';
  if (gap <= SEAM_WARNING) return 'note';
  return gap <= SEAM_FAILURE ? 'warning' : 'fail';
}
