import { drawingView } from '../../src/core/tasks/asked-part.js';
import type { PrintedPaper, PrintedSheet, PrintPage } from '../../src/papers/print-page-types.js';
import { twoShapes } from './kind-samples.js';

/** The page that prints class papers, as page data: papers, answer sheets, key. */

const title = 'Radio safety: mock paper 7';
const className = 'Thursday beginners';
const four = ['A', 'B', 'C', 'D'];

const sheet = (version: number): PrintedSheet => ({
  version,
  title,
  className,
  rows: [
    { number: 1, letters: four },
    { number: 2, letters: four },
    { number: 3, letters: four.slice(0, 3) },
  ],
  questions: 3,
  dense: version > 1,
});

const marks = twoShapes.parts.map(({ at }, index) => ({ letter: four[index] ?? '', at, look: 'plain' as const, chooses: null }));

const paper = (version: number): PrintedPaper => ({
  version,
  title,
  className,
  facts: '3 questions, 30 minutes, pass mark 2, UK 230 V',
  questions: [
    {
      number: 1,
      stem: 'Suppose a path through the body of 2000 Ω is put across 230 V. What current flows?',
      drawing: null,
      lead: null,
      pairs: true,
      options: ['8.7 mA', '30 mA', '115 mA', '460 mA'].map((text, index) => ({ letter: four[index] ?? '', text })),
    },
    {
      number: 2,
      stem: 'Mungo touches a live terminal with one hand and a neutral terminal with the other. What will the 30 mA RCD do?',
      drawing: drawingView(twoShapes, true, [], `v${version}-q2`),
      lead: null,
      pairs: false,
      options: [
        'Trip at once, since more than 30 mA is flowing',
        'Hold the current to 30 mA until he lets go',
        'Probably nothing: what goes out also comes back',
        'Trip, but only after the plug fuse has blown',
      ].map((text, index) => ({ letter: four[index] ?? '', text })),
    },
    {
      number: 3,
      stem: 'Where is the round one?',
      drawing: drawingView(twoShapes, false, marks, `v${version}-q3`),
      lead: 'The letters on the drawing mark:',
      pairs: true,
      options: ['on the left', 'on the right', 'below both'].map((text, index) => ({ letter: four[index] ?? '', text })),
    },
  ],
  source: 'Questions from the pack Safety core 0.1.0, licence CC-BY-SA-4.0.',
  sheet: sheet(version),
});

const numbers = (chosen: string) => ['1', '2'].map((value) => ({ value, text: value, chosen: value === chosen }));

const papers: PrintPage['data'] = {
  className,
  title,
  back: '/class-papers/0b9f1c1e-6f0a-4a53-9d6f-0d6f2a3f1b77',
  action: '/class-papers/0b9f1c1e-6f0a-4a53-9d6f-0d6f2a3f1b77/print',
  lead: 'Each version begins on a new sheet.',
  whats: [
    { value: 'papers', text: 'Papers, each with its answer sheet', chosen: true },
    { value: 'key', text: 'Marking key, for the tutor', chosen: false },
  ],
  sizes: [
    { value: 'a4', text: 'A4', chosen: true },
    { value: 'letter', text: 'US Letter', chosen: false },
  ],
  large: false,
  from: numbers('1'),
  to: numbers('2'),
  letter: false,
  oneSet: false,
  papers: [paper(1), paper(2)],
  sheets: [],
  key: null,
  titleBlock: [{ label: 'Paper', value: title, width: 12, name: true, id: false, href: null }],
};

const key: PrintPage['data'] = {
  ...papers,
  lead: 'For the tutor: print it by itself.',
  oneSet: true,
  papers: [],
  key: {
    title,
    className,
    facts: 'Pack Safety core 0.1.0, UK 230 V. To pass: 2 of 3.',
    together: [
      {
        versions: [1, 2],
        rows: [
          { number: 1, letters: ['C', 'A'] },
          { number: 2, letters: ['C', 'B'] },
          { number: 3, letters: ['B', 'C'] },
        ],
      },
    ],
    versions: [1, 2].map((version) => ({
      version,
      rows: [1, 2, 3].map((number) => ({ number, letter: 'B', objective: `FU-0${number}` })),
    })),
  },
};

export const printPages: readonly { name: string; page: PrintPage }[] = [
  { name: 'print-papers', page: { view: 'papers/print', data: papers } },
  {
    name: 'print-large-letter',
    page: { view: 'papers/print', data: { ...papers, large: true, letter: true, oneSet: true, from: [], to: [], papers: [paper(1)] } },
  },
  { name: 'print-sheets', page: { view: 'papers/print', data: { ...papers, papers: [], sheets: [sheet(1), sheet(2)] } } },
  { name: 'print-key', page: { view: 'papers/print', data: key } },
];
