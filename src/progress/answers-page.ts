import type { Person } from '../accounts/index.js';
import { dayWords, isoDay } from '../core/calendar.js';
import { counted, shortened } from '../core/words.js';
import { field } from '../study/index.js';
import type { AnswersPage } from './page-types.js';
import type { AnswerSearch, AnswersView } from './service.js';
import type { GivenRow } from './store.js';
import { certaintyWords, pageOf } from './words.js';

/** All that somebody answered, the latest first. */

const shows = { all: 'All answers', wrong: 'Only wrong ones', 'sure-wrong': 'Sure, and wrong' } as const;

export function answersPage({ search, rows, total }: AnswersView, person: Person): AnswersPage {
  const pages = Math.ceil(total / pageOf);
  const first = (search.page - 1) * pageOf + 1;
  return {
    view: 'progress/answers',
    data: {
      text: search.text,
      shows: Object.entries(shows).map(([value, text]) => ({ value, text, chosen: value === search.show })),
      found: foundWords(search, total),
      days: daysOf(rows),
      before: search.page > 1 ? addressOf({ ...search, page: search.page - 1 }) : null,
      after: search.page < pages ? addressOf({ ...search, page: search.page + 1 }) : null,
      pageWords: pages > 1 ? `${first} to ${first + rows.length - 1} of ${total}` : null,
      titleBlock: [field('Candidate', person.displayName, 6, { name: true }), field('Answers', `${total} found`, 6)],
    },
  };
}

function foundWords({ text, show, page }: AnswerSearch, total: number): string {
  if (total > 0) return `${counted(total, 'answer')}.`;
  if (page > 1) return 'Nothing on this page. Go back to the later ones.';
  if (text === '' && show === 'all') return 'You have not answered anything yet.';
  return `No answer of yours fits.${text === '' ? '' : ' Try fewer words.'}`;
}

function addressOf({ text, show, page }: AnswerSearch): string {
  const query = new URLSearchParams({
    ...(text === '' ? {} : { text }),
    ...(show === 'all' ? {} : { show }),
    ...(page === 1 ? {} : { page: String(page) }),
  });
  return `/progress/answers?${query.toString()}`.replace(/\?$/, '');
}

function daysOf(rows: readonly GivenRow[]): AnswersPage['data']['days'] {
  const days = new Map<number, GivenRow[]>();
  for (const row of rows) days.set(row.day, [...(days.get(row.day) ?? []), row]);
  return [...days].map(([day, own]) => ({
    iso: isoDay(day),
    title: dayWords(day),
    answers: own.map((row) => ({
      href: addressOfAnswer(row),
      code: row.code,
      stem: shortened(row.stem),
      verdict: verdictOf(row),
      sure: row.unknown ? '' : row.evening === null ? certaintyWords[row.certainty].toLowerCase() : 'at a class evening',
    })),
  }));
}

function addressOfAnswer({ token, sitting, evening, place }: GivenRow): string {
  if (evening !== null) return `/evening/${evening}/${place ?? 1}`;
  return sitting === null ? `/study/answers/${token}` : `/papers/sittings/${sitting}/review/${place ?? 1}`;
}

function verdictOf({ unknown, right, score }: GivenRow): string {
  if (unknown) return 'not known';
  if (right) return 'right';
  return score !== null && score > 0.5 ? 'partly right' : 'wrong';
}
