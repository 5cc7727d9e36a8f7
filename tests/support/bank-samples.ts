import type { BankPage, BankQuestionPage, QueriesPage, QueryPage, RaisePage } from '../../src/bank/page-types.js';
import { answeredPart, keyWords } from '../../src/core/tasks/answered-part.js';
import { askedPart } from '../../src/core/tasks/asked-part.js';
import { showFixed } from '../../src/core/tasks/index.js';
import { emptyEntry } from '../../src/core/tasks/task.js';
import type { FixedKind } from '../../src/core/questions/schema.js';
import { sampleOf, twoShapes } from './kind-samples.js';

/** The pages of the bank and of queries as page data. */

const kinds = ['single', 'several', 'order', 'pairs', 'place'] as const satisfies FixedKind[];
const csrf = 'csrf-token';
const titleBlock = [{ label: 'Bank', value: '80 objectives', width: 12, name: true, id: false, href: null }] as const;

const list: BankPage['data'] = {
  where: [
    {
      label: 'Fuses',
      choices: [
        { value: 't1', text: 'FU Fuses, all (47)', chosen: false },
        { value: 'o3', text: 'FU-03 The right fuse (7)', chosen: true },
      ],
    },
  ],
  kinds: [
    { value: 'single', text: 'Single best answer', chosen: false },
    { value: 'order', text: 'Put the steps in order', chosen: true },
  ],
  text: 'flex <hot>',
  retired: true,
  found: '51 questions.',
  objectives: [
    {
      title: 'FU-03 The right fuse',
      entries: [
        {
          href: '/bank/questions/7',
          code: 'FU-03-001',
          stem: 'A lamp of 60 W at 230 V: which fuse?',
          kind: 'Single best answer',
          note: 'a query waits',
        },
        { href: '/bank/questions/8', code: 'nf-fuse', stem: 'Fuse for a load', kind: 'Fresh numbers each time', note: null },
      ],
    },
  ],
  before: '/bank?page=1',
  after: '/bank?page=3',
  pageWords: '51 to 100 of 120',
  queries: '2 queries wait for an answer.',
  titleBlock: [...titleBlock],
};

function question(kind: FixedKind): BankQuestionPage['data'] {
  const found = sampleOf(kind);
  const task = showFixed(found, 1, twoShapes);
  const drawing = kind === 'single' ? twoShapes : null;
  return {
    ...askedPart(found.stem, task, drawing, emptyEntry, null),
    code: found.id,
    topicTitle: 'Letters',
    state: kind === 'single' ? 'Retired: it is asked no more.' : null,
    back: { href: '/bank?text=flex', label: 'Back to what was found' },
    again: kind === 'place' ? null : { href: '/bank/questions/7?seed=2&region=uk', label: 'Another order' },
    regions:
      kind === 'single'
        ? [
            { href: null, label: 'United Kingdom, 230 V' },
            { href: '/bank/questions/7?region=na', label: 'North America, 120 V' },
          ]
        : [],
    fact: keyWords(task),
    key: answeredPart(task, drawing, null),
    explanation: found.explanation,
    tellTales: [],
    working: null,
    caution: { sign: 'general', text: 'Mind the step.' },
    sources: [{ title: 'A book about letters, 2019', note: 'read' }],
    revisions: [
      { href: null, label: 'Revision 2', note: 'in the bank since 26 Nov 2026' },
      { href: '/bank/questions/7?revision=1', label: 'Revision 1', note: 'in the bank since 2 Nov 2026' },
    ],
    queries: kind === 'single' ? [{ href: '/queries/0b6f', label: 'Two answers are right', state: 'waits, from Zelda' }] : [],
    raiseHref: '/queries/new?question=7&revision=2&seed=1&region=uk',
    titleBlock: [...titleBlock],
  };
}

const raise: RaisePage['data'] = {
  csrf,
  query: '0b9f1c1e-6f0a-4a53-9d6f-0d6f2a3f1b77',
  question: '7',
  revision: '2',
  seed: '4',
  region: 'uk',
  code: 'FU-03-001',
  stem: 'A lamp of 60 W at 230 V: which fuse?',
  body: { value: '', why: null },
  titleBlock: [...titleBlock],
};

const line = { href: '/queries/0b6f', code: 'FU-03-001 The right fuse', body: 'Two <answers> are right', note: 'Raised on 26 Nov 2026.' };
const queries: QueriesPage['data'] = {
  headline: 'One query waits for an answer',
  lead: 'Whoever raised a query sees your answer.',
  waiting: [line],
  answered: [line],
  titleBlock: [...titleBlock],
};

const query: QueryPage['data'] = {
  csrf,
  code: 'FU-03-001',
  stem: 'A lamp of 60 W at 230 V: which fuse?',
  questionHref: '/bank/questions/7?revision=2',
  byName: 'Zelda',
  raised: '26 Nov 2026',
  body: ['Two <answers> are right.', 'So says my meter: 13 A.'],
  answer: { by: 'Tessa', when: '26 Nov 2026', paragraphs: ['Thank you. It will be changed.'] },
  waiting: null,
  form: {
    action: '/queries/0b6f/answer',
    before: '2026-11-26T18:00:00.000Z',
    answer: { value: 'Thank you.', why: null },
    label: 'Change',
    hint: 'Zelda will read it.',
    folded: true,
  },
  titleBlock: [...titleBlock],
};

type BankPages = BankPage | BankQuestionPage | RaisePage | QueriesPage | QueryPage;

export const bankPages: readonly { name: string; page: BankPages }[] = [
  { name: 'bank', page: { view: 'bank/list', data: list } },
  {
    name: 'bank-empty',
    page: {
      view: 'bank/list',
      data: { ...list, objectives: [], before: null, after: null, pageWords: null, found: 'Nothing in the bank fits.' },
    },
  },
  ...kinds.map((kind) => ({ name: `bank-${kind}`, page: { view: 'bank/question' as const, data: question(kind) } })),
  { name: 'raise', page: { view: 'bank/raise', data: raise } },
  {
    name: 'raise-fault',
    page: { view: 'bank/raise', data: { ...raise, body: { value: 'x', why: 'It holds a sign that cannot be kept.' } } },
  },
  { name: 'queries', page: { view: 'bank/queries', data: queries } },
  { name: 'queries-none', page: { view: 'bank/queries', data: { ...queries, waiting: [], answered: [] } } },
  { name: 'query', page: { view: 'bank/query', data: query } },
  {
    name: 'query-waiting',
    page: { view: 'bank/query', data: { ...query, questionHref: null, answer: null, waiting: 'A tutor will look.', form: null } },
  },
  {
    name: 'query-fault',
    page: {
      view: 'bank/query',
      data: {
        ...query,
        form: {
          action: '/queries/0b6f/answer',
          before: '',
          label: 'Send',
          hint: 'Zelda will read it.',
          folded: false,
          answer: { value: '', why: 'Write an answer first.' },
        },
      },
    },
  },
];
