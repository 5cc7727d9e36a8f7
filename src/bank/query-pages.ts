import type { Person } from '../accounts/index.js';
import { may } from '../core/permissions.js';
import type { FieldPart } from '../core/page-parts.js';
import { shortened } from '../core/words.js';
import type { QueriesPage, QueryLine, QueryPage, RaisePage } from './page-types.js';
import { dateOf, field } from './pages.js';
import type { QueryView, QuestionAsked } from './queries.js';
import type { QueryRow } from './query-store.js';

/** Queries: raising one, the list, and one with its answer. */

export function raisePage({ bank, about, stem }: QuestionAsked, query: string, csrf: string, body: FieldPart): RaisePage {
  return {
    view: 'bank/raise',
    data: {
      csrf,
      query,
      question: String(about.question),
      revision: String(bank.revision),
      seed: String(about.seed ?? ''),
      region: about.region ?? '',
      code: bank.code,
      stem,
      body,
      titleBlock: [
        field('Objective', `${bank.objective.code} ${bank.objective.title}`, 8, true),
        field('Question', `${bank.code}, revision ${bank.revision}`, 4),
      ],
    },
  };
}

export function queriesPage(queries: readonly QueryRow[], person: Person): QueriesPage {
  const all = may(person.role, 'read-bank');
  const waiting = queries.filter(({ answer }) => answer === null);
  const answered = queries.filter(({ answer }) => answer !== null);
  return {
    view: 'bank/queries',
    data: {
      headline: headline(waiting.length, queries.length, all),
      lead: all
        ? 'What candidates and tutors think is wrong with a question. Whoever raised a query sees your answer.'
        : 'What you think is wrong with a question. A tutor answers here.',
      waiting: waiting.map((query) => lineOf(query, person, all)),
      answered: answered.map((query) => lineOf(query, person, all)),
      titleBlock: [
        field('Queries', `${waiting.length} waiting, ${answered.length} answered`, 6, true),
        field('For', person.displayName, 6),
      ],
    },
  };
}

function headline(waiting: number, known: number, all: boolean): string {
  if (known === 0) return all ? 'Nobody has raised a query' : 'You have raised no query';
  if (waiting === 0) return 'Every query is answered';
  return waiting === 1 ? 'One query waits for an answer' : `${waiting} queries wait for an answer`;
}

function lineOf(query: QueryRow, person: Person, all: boolean): QueryLine {
  const by = all ? ` by ${query.byName}` : '';
  const fresh = !all && query.answer !== null && query.seenAt === null ? ' New answer.' : '';
  const end = query.answeredAt === null ? '' : `, answered on ${dateOf(query.answeredAt, person)}`;
  return {
    href: `/queries/${query.id}`,
    code: `${query.code} ${query.objectiveTitle}`,
    body: shortened(query.body),
    note: `Raised${by} on ${dateOf(query.raisedAt, person)}${end}.${fresh}`,
  };
}

/** @param typed what a tutor wrote and could not be taken, with why; null at first */
export function queryPage({ query, stem }: QueryView, person: Person, csrf: string, typed: FieldPart | null): QueryPage {
  const answers = may(person.role, 'read-bank');
  return {
    view: 'bank/query',
    data: {
      csrf,
      code: query.code,
      stem,
      questionHref: answers ? bankAddress(query) : null,
      byName: query.personId === person.id ? 'You' : query.byName,
      raised: dateOf(query.raisedAt, person),
      body: paragraphs(query.body),
      answer:
        query.answer === null || query.answeredAt === null
          ? null
          : { by: query.answeredByName ?? 'A tutor', when: dateOf(query.answeredAt, person), paragraphs: paragraphs(query.answer) },
      waiting:
        query.answer === null && !answers
          ? 'It is sent. A tutor will look at it. The answer will stand here, and the page Now leads to it.'
          : null,
      form: answers
        ? {
            action: `/queries/${query.id}/answer`,
            before: query.answeredAt?.toISOString() ?? '',
            answer: typed ?? { value: query.answer ?? '', why: null },
            label: query.answer === null ? 'Send the answer' : 'Change the answer',
            hint:
              query.personId === person.id
                ? 'You raised it yourself. The answer stands here for all tutors.'
                : `${query.byName} will read it.`,
            folded: query.answer !== null && typed === null,
          }
        : null,
      titleBlock: [
        field('Objective', `${query.objective} ${query.objectiveTitle}`, 8, true),
        field('Question', `${query.code}, revision ${query.revision}`, 4),
      ],
    },
  };
}

/** The question as it stood before whoever raised it. */
function bankAddress({ questionId, revision, seed, region }: QueryRow): string {
  const at = new URLSearchParams({
    revision: String(revision),
    ...(seed === null ? {} : { seed: String(seed) }),
    ...(region === null ? {} : { region }),
  });
  return `/bank/questions/${questionId}?${at.toString()}`;
}

const paragraphs = (text: string): string[] => text.split(/\n+/).filter((line) => line.trim() !== '');
