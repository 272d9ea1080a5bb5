/** The tests of one mutant, named by the variable MUTANT. */
import { defineConfig } from 'vitest/config';
import { configuration } from '../../vitest.config.ts';
import { MUTANTS } from './mutants.ts';
import { planting } from './planted.ts';

const mutant = MUTANTS.find(({ name }) => name === process.env.MUTANT);
if (mutant === undefined) throw new Error('MUTANT is the name of a mutant');

export default defineConfig(configuration('mutant', planting(mutant)));
