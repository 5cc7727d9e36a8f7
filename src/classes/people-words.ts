import { dayNumber, dayWords } from '../core/calendar.js';
import { localText } from '../core/local-time.js';
import type { AddressPart, SaidPart } from './people-page-types.js';

/** What the pages about people say in the same words. */

/** `Wednesday 2 December 2026 at 19:30`. */
export const momentWords = (at: Date, timeZone: string): string =>
  `${dayWords(dayNumber(at.getTime(), timeZone))} at ${localText(at.getTime(), timeZone).slice(11)}`;

export const dayOf = (at: Date, timeZone: string): string => dayWords(dayNumber(at.getTime(), timeZone));

/** Names as a sentence takes them: `Alma, Tessa and Wilf`. */
export function listed(names: readonly string[]): string {
  if (names.length < 2) return names[0] ?? '';
  return `${names.slice(0, -1).join(', ')} and ${names.at(-1) ?? ''}`;
}

/** An address to be typed elsewhere: one of this machine leads nowhere there. */
export const addressPart = (text: string): AddressPart => ({
  text,
  local: /^https?:\/\/(localhost|127\.|\[::1\]|0\.0\.0\.0)/.test(text),
});

const said: Readonly<Record<string, SaidPart>> = {
  made: { word: 'The class is made.', text: 'Now bring candidates in: with a joining code, or by writing their names down here.' },
  saved: { word: 'Saved.', text: 'The class is as you have just written it.' },
  ended: {
    word: 'The course has ended.',
    text: 'Its code is dead. Candidates, answers and papers are kept, and you can take it up again.',
  },
  again: { word: 'The course is running again.', text: 'It has no joining code. Make one if somebody is to join.' },
  code: { word: 'This code opens the class.', text: 'Any earlier code is dead.' },
  kept: { word: 'The code stays.', text: 'It has a new last day; slips with it remain good.' },
  closed: { word: 'The code is closed.', text: 'Nobody can join by a code. Whoever is in the class stays.' },
  tutor: { word: 'The tutor is added.', text: 'The class is among that tutor’s classes from now on.' },
  'tutor-removed': { word: 'The tutor is removed.', text: 'That tutor no longer sees this class.' },
  'last-tutor': { word: 'Nobody was removed.', text: 'A class keeps its last tutor. Add another one first.' },
  removed: {
    word: 'The candidate is not in this class any more.',
    text: 'The account, answers and papers stay the candidate’s; a paper that is open can be finished.',
  },
  'kept-longer': { word: 'The candidate is kept for a year more.', text: 'After that, the time counts again from the last visit.' },
  moved: { word: 'The candidate is in the other class now.', text: 'Answers and papers went along, with extra time on papers.' },
};

/** What the page says was done; nothing for a word that is none of ours. */
export const saidPart = (word: unknown): SaidPart | null =>
  typeof word === 'string' && Object.hasOwn(said, word) ? (said[word] ?? null) : null;
