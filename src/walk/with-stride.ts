/** The stride of a graded size as one of its finished measures. */
import type { GradedSize } from '../grade/graded-range';
import { allowedStep } from './walking-room';

/** The size with the measure `stride` in mm: the longest step that it allows. */
export function withStride(size: GradedSize): GradedSize {
  return { ...size, measures: [...size.measures, { name: 'stride', value: allowedStep(size) }] };
}
