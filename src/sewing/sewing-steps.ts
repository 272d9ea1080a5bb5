/** The steps in which a skirt is sewn, in an order in which each finds its edges free. */
import { liningEdgeSteps, liningHemSteps, liningSteps } from './lining';
import { centerBackSteps, dartSteps, hemStep, sideStep } from './shell';
import type { SewnSkirt } from './skirt';
import type { SewingStep } from './step';
import { interfacingSteps, waistSteps } from './waist-steps';

/**
 * All steps from the cut pieces to the finished skirt: flat work first, then round (common practice,
 * no source). Each edge of each piece but a fold is sewn in exactly one step.
 */
export function sewingSteps(skirt: SewnSkirt): readonly SewingStep[] {
  return [
    ...interfacingSteps(skirt),
    ...dartSteps(skirt),
    ...centerBackSteps(skirt),
    sideStep(skirt),
    ...liningSteps(skirt),
    ...waistSteps(skirt),
    hemStep(skirt),
    ...liningHemSteps(skirt),
    ...liningEdgeSteps(skirt),
  ];
}
