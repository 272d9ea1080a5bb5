/** The tests of one mutant, named by the variable MUTANT. */
import { defineConfig } from 'vitest/config';
import { configuration } from '../../vitest.config';
import { MUTANTS } from './mutants';
import { planting } from './planted';

const mutant = MUTANTS.find(({ name }) => name === process.env.MUTANT);
if (mutant === undefined) throw new Error('MUTANT is the name of a mutant');

export default defineConfig(configuration('mutant', planting(mutant)));
