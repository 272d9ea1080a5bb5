/** The slips that are looked for. A new one is a file of its own and a line in this list. */
import { axesSlips } from './axes';
import { exchangeSlips } from './exchanged';
import { factorSlips } from './factor';
import { missingSlips } from './missing';
import { oneSizeSlips } from './one-size';
import { signSlips } from './sign';
import { sizeSlips } from './sizes';
import type { SlipFamily } from './suspected-slip';

/** Every family, in no order: each slip has its own cost. */
export const SLIP_FAMILIES: readonly SlipFamily[] = [
  signSlips,
  axesSlips,
  factorSlips,
  sizeSlips,
  exchangeSlips,
  missingSlips,
  oneSizeSlips,
];
