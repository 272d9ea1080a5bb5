/** The steps in which a skirt is sewn, in an order in which each finds its edges free. */
import { present } from '../lists/present';
import { liningEdgeStep, liningHemStep, liningSteps } from './lining';
import { centerBackSteps, dartStep, hemStep, sideStep } from './shell';
import type { SewnSkirt } from './skirt';
import type { SewingStep } from './step';
import { interfacingStep, waistSteps } from './waist-steps';

/**
 * All steps from the cut pieces to the finished skirt: flat work first, then round (common practice,
 * no source). Each edge of each piece but a fold is sewn in exactly one step.
 */
export function sewingSteps(skirt: SewnSkirt): readonly SewingStep[] {
  return present([
    interfacingStep(skirt),
    dartStep(skirt),
    ...centerBackSteps(skirt),
    sideStep(skirt),
    ...liningSteps(skirt),
    ...waistSteps(skirt),
    hemStep(skirt),
    liningHemStep(skirt),
    liningEdgeStep(skirt),
  ]);
}
