import type { ClassQuestionsPage, QuestionFiguresPage, SuspectPart } from '../../src/analysis/question-page-types.js';
import { classTabs } from '../../src/classes/tabs.js';
import type { TitleField } from '../../src/core/page-parts.js';
import { drawingView } from '../../src/core/tasks/asked-part.js';
import { twoShapes } from './kind-samples.js';

/** The pages about the questions of a class as page data. Figures are made up for layout. */

const field = (label: string, value: string, width: TitleField['width']): TitleField => {
  return { label, value, width, name: width === 12, id: false, href: null };
};

const scopes = (path: string): ClassQuestionsPage['data']['scopes'] => [
  { href: `${path}?of=class`, text: 'This class', current: true },
  { href: `${path}?of=club`, text: 'All classes', current: false },
  { href: `${path}?of=all`, text: 'Everybody here', current: false },
];

const query = { href: '/queries/0b6f', text: 'H. <Vane> says that two answers are right', note: 'waits for an answer' };

const suspect: SuspectPart = {
  href: '/classes/3/questions/7?of=class',
  code: 'FU-06-004',
  title: 'When a fuse has blown',
  stem: 'A 13 A fuse has blown for the second time. What is done first?',
  figures: '3 of 20 right at first sight, 95 % limits 5 to 36 %. 4 were sure, and wrong.',
  signs: [
    {
      grave: true,
      text: 'Those who know more are more often wrong here: correlation with the rest −0.48 (−0.76 to −0.05).',
      todo: 'Check the key, and look for a second right answer.',
    },
  ],
  choices: [
    { letter: 'A', text: 'Fit a larger fuse', mark: '', chosen: '11' },
    { letter: 'B', text: 'Find out why', mark: 'Key', chosen: '3' },
    { letter: 'C', text: 'Ask H. <Vane> for 13 A of wire', mark: '', chosen: '6' },
  ],
  queries: [query],
};

const list: ClassQuestionsPage['data'] = {
  className: 'Thursday <beginners>',
  members: '20 candidates',
  tabs: classTabs(3, '/questions'),
  scopes: scopes('/classes/3/questions'),
  lead: '2 questions to look at, the worst first.',
  note: 'Counted is each person’s first answer to a question as it now stands.',
  suspects: [
    suspect,
    {
      ...suspect,
      href: '/classes/3/questions/8?of=class',
      code: 'nf-fuse',
      signs: [],
      choices: [{ letter: null, text: 'Used 120 V', mark: '', chosen: '2' }],
    },
    { ...suspect, href: '/classes/3/questions/9?of=class', code: 'EA-02-001', choices: [], queries: [] },
  ],
  folds: [
    {
      summary: '109 questions with too few answers to tell',
      lines: [{ href: '/classes/3/questions/10?of=class', code: 'LA-02-001', title: 'The right angle', note: '3 of 5 right' }],
    },
  ],
  hidden: '12 questions are left out here.',
  titleBlock: [field('Class', 'Thursday <beginners>', 12)],
};

const figures: QuestionFiguresPage['data'] = {
  className: 'Thursday <beginners>',
  code: 'FU-06-004',
  tabs: classTabs(3, '/questions'),
  back: '/classes/3/questions?of=class',
  scopes: scopes('/classes/3/questions/7'),
  stem: 'A 13 A fuse has blown for the second time. What is done first?',
  drawing: null,
  fact: null,
  lead: '3 of 20 right at first sight, 95 % limits 5 to 36 %.',
  hidden: null,
  signs: [...suspect.signs, { grave: false, text: 'Not yet chosen: D.', todo: 'Nothing yet.' }],
  choices: {
    columns: { parts: false, rest: true },
    rows: suspect.choices.map((choice) => ({ ...choice, rest: '−0.48 (−0.76 to −0.05)' })),
  },
  later: 'Met again: 14 of 16 answers right.',
  rest: 'Correlation with the rest: −0.48, 95 % limits −0.76 to −0.05, from 20 people.',
  groups: 'Of the 6 who did best with the rest, 1 had it right; of the 5 who did worst, 3. Upper-lower index: −0.43.',
  sureness: { levels: ['Sure', 'Guessing'], rows: [{ name: 'Asked H. <Vane>', mark: 'Key', counts: ['2', '5'] }] },
  revision: 'Revision 2: answers count since 3 Nov 2026.',
  queries: [query],
  bankHref: '/bank/questions/7',
  titleBlock: [field('Class', 'Thursday <beginners>', 12)],
};

export const questionAnalysisPages: readonly { name: string; page: ClassQuestionsPage | QuestionFiguresPage }[] = [
  { name: 'class-questions', page: { view: 'analysis/class-questions', data: list } },
  {
    name: 'class-questions-none',
    page: { view: 'analysis/class-questions', data: { ...list, lead: 'Nobody has answered yet.', suspects: [], folds: [], hidden: null } },
  },
  { name: 'question-figures', page: { view: 'analysis/question-figures', data: figures } },
  {
    name: 'question-figures-parts',
    page: {
      view: 'analysis/question-figures',
      data: {
        ...figures,
        drawing: drawingView(twoShapes, true, []),
        choices: {
          columns: { parts: true, rest: false },
          rows: [{ letter: 'A', text: 'Two is even', mark: 'True', chosen: '8 of 12', rest: '' }],
        },
      },
    },
  },
  {
    name: 'question-figures-hidden',
    page: {
      view: 'analysis/question-figures',
      data: {
        ...figures,
        lead: '',
        hidden: 'Fewer than five people beyond your classes have answered this question.',
        signs: [],
        choices: null,
        later: '',
        rest: '',
        groups: null,
        sureness: null,
        fact: 'The answer is 13 A.',
        queries: [],
      },
    },
  },
];
