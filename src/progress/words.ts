import type { Certainty } from '../core/questions/schema.js';

/** As on the buttons. */
export const certaintyWords: Readonly<Record<Certainty, string>> = { sure: 'Sure', fairly: 'Fairly sure', guessing: 'Guessing' };

/** Answers on one page. */
export const pageOf = 50;
