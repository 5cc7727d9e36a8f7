import type { RecordedCertainty } from '../core/questions/schema.js';

/** As on the buttons. */
export const certaintyWords: Readonly<Record<RecordedCertainty, string>> = {
  sure: 'Sure',
  fairly: 'Fairly sure',
  guessing: 'Guessing',
  unsaid: 'On a paper',
};

/** Answers on one page. */
export const pageOf = 50;
