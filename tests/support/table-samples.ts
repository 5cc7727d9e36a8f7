import type { TableFiguresPage, TablePage } from '../../src/analysis/table-page-types.js';
import { field } from '../../src/study/index.js';

/** The pages for a table of answers as page data. */

const titleBlock = [field('Tutor', 'H. <Vane>', 12, { name: true })];

const form: TablePage['data'] = {
  csrf: 'token',
  answers: { value: '', why: null },
  key: { value: '', why: null },
  fault: null,
  titleBlock,
};

const faulty: TablePage['data'] = {
  ...form,
  answers: { value: 'candidate,q1\nOdo,E', why: '“q1” has “E”; its options are A B C D.' },
  key: { value: 'item,key,options\nq1,A,A B C D', why: '2 things to mend, listed above.' },
  fault: {
    why: '3 things to mend.',
    findings: [
      { place: 'The answers, line 2', words: '“q1” has “E”; its options are A B C D.' },
      { place: 'The key', words: 'A quotation mark is opened and never closed.' },
    ],
  },
};

const figures: TableFiguresPage['data'] = {
  headline: '1 of 2 questions to look at',
  lead: '20 candidates, 2 questions. Mean 1.2 of 2, standard deviation 0.8.',
  band: 'With fewer than 30 candidates, go by the intervals.',
  suspects: [
    {
      id: 'The angle of a <ladder>',
      figures: '12 of 20 right, which goes with 39 % to 78 %. Correlation with the rest: −0.48 (−0.76 to −0.05).',
      signs: [{ text: 'Those who know more are more often wrong here.', todo: 'Check the key.' }],
    },
  ],
  information: [{ todo: 'Nothing to mend.', seen: [{ id: 'q2', text: 'Easy: 20 of 20 are right.' }] }],
  few: 'q2.',
  chance: 'Of 2 sound questions before 20 candidates, about 0.2 would show a correlation below 0.20.',
  full: true,
  questions: [
    {
      id: 'The angle of a <ladder>',
      right: '12 of 20',
      limits: '39 % to 78 %',
      rest: '−0.48 (−0.76 to −0.05)',
      total: '−0.10',
      upperLower: '−0.33',
      dropped: '0.71',
      mark: 'look',
    },
    { id: 'q2', right: '20 of 20', limits: '84 % to 100 %', rest: '–', total: '–', upperLower: '0.00', dropped: '0.70', mark: 'too few' },
  ],
  options: [
    {
      id: 'q2',
      choices: [
        { option: 'A', figures: '20', key: true },
        { option: 'B', figures: '0', key: false },
      ],
    },
  ],
  notes: ['q2, correlation with the total and correlation with the rest: everybody is right.'],
  reliability: {
    kr20: '0.70 (0.41 to 0.87)',
    kr20Words: 'Too few answers to tell whether it reaches 0.70.',
    sem: '0.4 marks',
    semWords: 'A mark is good to about 0.4 up or down.',
  },
  titleBlock,
};

const few: TableFiguresPage['data'] = {
  ...figures,
  headline: 'Too few answers to tell',
  suspects: [],
  information: [],
  chance: null,
  full: false,
  options: [],
  notes: [],
  few: null,
  reliability: { kr20: null, kr20Words: 'Too few to tell: 2 candidates, and it takes 10.', sem: null, semWords: '' },
};

export const tablePages: readonly { name: string; page: TablePage | TableFiguresPage }[] = [
  { name: 'table', page: { view: 'analysis/table', data: form } },
  { name: 'table-fault', page: { view: 'analysis/table', data: faulty } },
  { name: 'table-figures', page: { view: 'analysis/table-figures', data: figures } },
  { name: 'table-figures-few', page: { view: 'analysis/table-figures', data: few } },
];
