import { readPhrase } from '../core/return-phrase.js';

/**
 * New phrases as the tutor's own browser keeps them until their slips are printed: `12.copper-window-…_13.…`. The server keeps only
 * hashes. Thirty of them take under 2 kB of the 4 kB that a cookie may have.
 */
export interface SlipWords {
  personId: number;
  words: string[];
}

export const writeSlips = (slips: readonly SlipWords[]): string =>
  slips.map(({ personId, words }) => `${personId}.${words.join('-')}`).join('_');

/** What cannot be read is left out. */
export const readSlips = (cookie: string): SlipWords[] =>
  cookie
    .slice(0, 4096)
    .split('_')
    .flatMap((part) => {
      const given = /^([1-9]\d{0,8})\.([a-z-]{1,80})$/.exec(part);
      const phrase = readPhrase(given?.[2] ?? '');
      return given === null || !phrase.understood ? [] : [{ personId: Number(given[1]), words: phrase.words }];
    });
