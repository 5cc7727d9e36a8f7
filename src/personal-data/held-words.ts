import { dayNumber, shortDate } from '../core/calendar.js';
import { localText } from '../core/local-time.js';
import { counted } from '../core/words.js';
import { givenText } from './held-given.js';
import type { HeldKind, HeldRow } from './held-store.js';

/** What is held, in words: for each kind what it is, who sees it, for how long, and a line for each row. */

export interface KindWords {
  title: string;
  /** Who sees it beside oneself and whoever runs the server. */
  seen: string;
  /** Where it is not kept as long as the account. */
  kept: string | null;
  line: (row: HeldRow, time: (at: unknown) => string) => string;
}

const text = (value: unknown): string => (value === null || value === undefined ? '' : String(value));
const date = (value: unknown): string => shortDate(text(value));
const yes = (value: unknown, words: string): string => (value === true ? words : '');
const joined = (...parts: string[]): string => parts.filter((part) => part !== '').join(', ');
const after = (value: unknown, words: (said: string) => string): string =>
  value === null || value === undefined || value === '' ? '' : words(text(value));
const list = (value: unknown): unknown[] => (Array.isArray(value) ? (value as unknown[]) : []);

/** `28 Nov 2026, 19:30` in somebody's own time zone. */
export function timeIn(timeZone: string): (at: unknown) => string {
  return (at) => {
    const moment = at instanceof Date ? at.getTime() : Date.parse(text(at));
    if (Number.isNaN(moment)) return '';
    return `${shortDate(new Date(dayNumber(moment, timeZone) * 86_400_000).toISOString().slice(0, 10))}, ${localText(moment, timeZone).slice(11)}`;
  };
}

const tutors = 'The tutors of your classes.';
const nobody = 'Only you, and whoever runs the server.';
const rightWords = (right: unknown): string => (right === null ? 'not marked yet' : right === true ? 'right' : 'not right');
const certain: Readonly<Record<string, string>> = { sure: 'sure', fairly: 'fairly sure', guessing: 'guessing', unsaid: '' };
const weekdays = ['Sunday', 'Monday', 'Tuesday', 'Wednesday', 'Thursday', 'Friday', 'Saturday'];

const accountKinds = {
  account: {
    title: 'Your account',
    seen: 'The tutors of your classes see your name and when you were last here. Staff see the names of staff.',
    kept: null,
    line: (row, time) =>
      joined(
        `${text(row['name'])} (${text(row['role'])}), number ${text(row['number'])}`,
        after(row['sign_in_name'], (name) => `signs in as ${name}`),
        `mains region ${text(row['region'])}`,
        `time zone ${text(row['time_zone'])}`,
        `since ${time(row['created_at'])}`,
        after(row['last_seen_at'], () => `last here ${time(row['last_seen_at'])}`),
        after(row['keep_until'], (day) => `kept at least until ${shortDate(day)}`),
        after(row['closed_at'], () => `closed ${time(row['closed_at'])}`),
        after(
          row['slip_at'],
          () => `new return slip ${time(row['slip_at'])} by ${text(row['slip_by'] ?? 'a tutor who is no longer here')}`,
        ),
        yes(row['has_return_phrase'], 'a scrambled return phrase'),
        yes(row['has_password'], 'a scrambled password'),
        yes(row['has_second_factor'], 'the secret of one-time codes'),
      ),
  },
  sessions: {
    title: 'Where you are signed in',
    seen: 'A candidate’s only by the candidate, and whoever runs the server; administrators can end those of staff.',
    kept: 'Until you sign out, and at the latest until the day that is said.',
    line: (row, time) =>
      joined(
        `A browser since ${time(row['since'])}`,
        `last used ${time(row['last_used'])}`,
        `until ${time(row['expires_at'])} at the latest`,
        yes(row['shared'], 'on a shared computer'),
      ),
  },
  recovery_codes: {
    title: 'Recovery codes',
    seen: nobody,
    kept: 'Until new ones are made.',
    line: (row, time) => (row['used_at'] === null ? 'One, scrambled, not used yet' : `One, used ${time(row['used_at'])}`),
  },
  removal_notice: {
    title: 'Notice of removal',
    seen: tutors,
    kept: 'Until you come back.',
    line: (row, time) => `You will be removed on ${date(row['remove_on'])} for want of visits, noticed ${time(row['noticed_at'])}`,
  },
  classes: {
    title: 'Your classes',
    seen: tutors,
    kept: 'Until you leave the class, or are taken out of it.',
    line: (row, time) =>
      joined(
        text(row['class']),
        `since ${time(row['joined_at'])}`,
        Number(row['extra_time']) > 0 ? `${text(row['extra_time'])} % more time on papers` : '',
        after(row['ended_at'], () => 'the course has ended'),
      ),
  },
} satisfies Partial<Record<HeldKind, KindWords>>;

const studyKinds = {
  plan: {
    title: 'Your plan',
    seen: nobody,
    kept: null,
    line: (row, time) =>
      joined(
        row['exam_day'] === null ? 'no day of an exam' : `exam on ${date(row['exam_day'])}`,
        counted(Number(row['minutes']), 'minute') + ' a day',
        after(row['paper'], (paper) => `working towards ${paper}`),
        list(row['weekdays_off']).length === 0
          ? ''
          : `not on ${list(row['weekdays_off'])
              .map((day) => weekdays[Number(day)])
              .join(', ')}`,
        list(row['days_off']).length === 0 ? '' : `nor on ${list(row['days_off']).map(date).join(', ')}`,
        `saved ${time(row['saved_at'])}`,
      ),
  },
  outlooks: {
    title: 'Your outlook, as it stood',
    seen: 'The tutors of your classes see what it is now.',
    kept: null,
    line: (row) =>
      `${date(row['day'])}: ${Math.round(Number(row['low']) * 100)} to ${Math.round(Number(row['high']) * 100)} % for ${date(row['for_day'])}, ${text(row['met'])} questions met`,
  },
  rounds: {
    title: 'Rounds of practice',
    seen: nobody,
    kept: null,
    line: (row, time) => {
      const codes = list(row['questions']).map((asked) => text((asked as HeldRow)['question']));
      return `${time(row['started_at'])}: ${text(row['minutes'])} minutes, ${codes.length === 0 ? 'nothing asked' : `asked ${codes.join(' ')}`}`;
    },
  },
  answers: {
    title: 'Your answers',
    seen: tutors,
    kept: null,
    line: (row, time) =>
      `${time(row['answered_at'])}: ${text(row['question'])}, “${text(row['text'])}”: ${joined(
        givenText(row),
        rightWords(row['right']),
        certain[text(row['certainty'])] ?? '',
        after(row['tell_tale'], (name) => `which tells of: ${name}`),
      )}`,
  },
  memories: {
    title: 'What the server reckons that you remember, of questions you met',
    seen: 'The tutors of your classes see what follows from it, topic by topic.',
    kept: null,
    line: (row) =>
      row['stability'] === null
        ? `${text(row['question'])}: ${counted(Number(row['reps']), 'answer')}, nothing reckoned from it yet`
        : joined(
            `${text(row['question'])}: last ${date(row['last_day'])}`,
            `due ${date(row['due_day'])}`,
            `${counted(Number(row['reps']), 'answer')}`,
            Number(row['stability']) < 1
              ? 'fades within a day'
              : `fades over about ${counted(Math.round(Number(row['stability'])), 'day')}`,
            yes(row['surely_wrong'], 'was sure and wrong'),
          ),
  },
  papers_made: {
    title: 'Mock papers of your own',
    seen: nobody,
    kept: null,
    line: (row, time) => `${text(row['title'])}, made ${time(row['made_at'])}`,
  },
  sheets: {
    title: 'Your answer sheets',
    seen: 'The tutors of a class see those of its own papers, also when you have left it. Of your own papers they see the answers.',
    kept: null,
    line: (row, time) => {
      const letters = list(row['answers']).map((each) => `${text((each as HeldRow)['place'])}${text((each as HeldRow)['choice'] ?? '–')}`);
      return joined(
        `${text(row['title'])}${after(row['class'], (name) => ` (${name})`)}`,
        row['handed_in_at'] === null ? 'not handed in' : `handed in ${time(row['handed_in_at'])}, ${text(row['right'])} right`,
        row['passed'] === null ? '' : row['passed'] === true ? 'passed' : 'not passed',
        Number(row['extra_time']) > 0 ? `${text(row['extra_time'])} % more time` : '',
        letters.length === 0 ? '' : `letters ${letters.join(' ')}`,
      );
    },
  },
  evenings: {
    title: 'What you chose at class evenings',
    seen: tutors,
    kept: null,
    line: (row, time) =>
      `${text(row['evening'])} (${text(row['class'])}), question ${text(row['place'])}, ${text(row['question'])}: ${text(row['choice'])}, ${rightWords(row['right'])}, ${time(row['saved_at'])}`,
  },
} satisfies Partial<Record<HeldKind, KindWords>>;

export const candidateKinds = { ...accountKinds, ...studyKinds };
export const lineParts = { text, date, yes, joined, after };
