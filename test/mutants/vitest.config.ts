/** The tests of one mutant, named by the variable MUTANT. */
import { defineConfig } from 'vitest/config';
import { configuration } from '../../vitest.config.ts';
import { MUTANTS, NO_MUTANT } from './mutants.ts';
import { planting } from './planted.ts';

const wanted = process.env.MUTANT;
const planters = MUTANTS.filter(({ name }) => name === wanted).map(planting);
if (planters.length === 0 && wanted !== NO_MUTANT)
  throw new Error(`MUTANT is the name of a mutant, or ${NO_MUTANT}`);

export default defineConfig(configuration('mutant', ...planters));
