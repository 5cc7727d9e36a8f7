import { field } from '../../src/study/index.js';
import type { CoverPage, HandInPage, PapersPage, ResultPage, ReviewPage, SittingPage, TimePart } from '../../src/papers/page-types.js';

/** The pages of a candidate's papers as page data. */

const csrf = 'token';
const uuid = '6f1c2d3e-0000-4000-8000-000000000002';
const root = `/papers/sittings/${uuid}`;
const titleBlock = [field('Paper', 'Mock paper 7', 6, { name: true }), field('Candidate', 'Zelda <Marrow>', 6)];
const practise = { csrf, round: uuid, objective: 'entry-safety/LA-02', label: 'Go over LA-02: The angle of a ladder' };

const time: TimePart = {
  left: '13 minutes left',
  seconds: 771,
  until: 'Hand in by 20:05. The clock runs on even if you close the page.',
  gone: '56.7',
  ticks: [
    { at: '0.00', label: '0' },
    { at: '100.00', label: '30' },
  ],
  href: root,
};

const papers: PapersPage['data'] = {
  csrf,
  sitting: uuid,
  running: [
    { href: root, label: 'Carry on with Mock paper 7', note: 'The clock is running.' },
    { href: root, label: 'Begin Mock paper 8', note: 'The clock has not started.' },
  ],
  open: [{ action: `/papers/${uuid}/sit`, label: 'Take up Winter paper', note: 'Thursday beginners: 26 questions, 30 minutes.' }],
  papers: [{ value: 'entry-safety/twenty-six', text: 'Twenty-six questions: 30 min, 19 of 26 to pass (Entry safety)', chosen: true }],
  lacking: [{ text: 'Forty questions', why: 'EA Earths lacks 1: 4 asked, 3 there' }],
  extra: [
    { value: '0', text: 'No extra time' },
    { value: '25', text: '25 % more' },
  ],
  done: [{ href: root, title: 'Mock paper 6', iso: '2026-11-20', day: 'Fri 20 Nov', mark: '19 of 26', passed: 'passed' }],
  titleBlock,
};

const cover: CoverPage['data'] = {
  csrf,
  action: `${root}/begin`,
  title: 'Mock paper 7',
  facts: [
    { label: 'Questions', value: '26' },
    { label: 'Time', value: '30 minutes' },
  ],
  titleBlock,
};

const options = (position: number, chosen: string) =>
  ['0.8 m', '1.2 m', '1.6 m', '19.2 m'].map((text, index) => {
    const letter = 'ABCD'.charAt(index);
    return { id: `c${position}-${letter}`, letter, text, chosen: letter === chosen };
  });

const cells = Array.from({ length: 20 }, (_, index) => {
  const [position, choice] = [index + 1, index < 11 ? 'ABCD'.charAt(index % 4) : ''];
  const words = choice === '' ? 'blank' : `answered ${choice}`;
  return { position, href: `${root}/${position}`, choice, words, again: index === 3, current: index === 11 };
});

const sitting: SittingPage['data'] = {
  title: 'Mock paper 7',
  place: 'Question 12 of 20',
  csrf,
  action: `${root}/save`,
  time,
  all: false,
  questions: [
    {
      position: 12,
      alone: true,
      stem: 'A ladder’s top rests against the wall 4.8 m above level ground. How far from the wall should its feet be?',
      drawing: null,
      options: options(12, 'B'),
      was: 'B',
      again: true,
    },
  ],
  next: { go: '13', label: 'Save, go to 13' },
  before: { go: '11', label: 'Back to 11' },
  sheet: { saved: 11, open: 9, cells },
  other: { href: `${root}/all`, label: 'All questions on one page' },
  handIn: `${root}/hand-in`,
  caution: { sign: 'general', text: 'Work at height kills.' },
  titleBlock,
};

const all: SittingPage['data'] = {
  ...sitting,
  place: '20 questions',
  all: true,
  questions: cells.map(({ position, choice, again }) => ({
    position,
    alone: false,
    stem: `What is the distance in question ${position}, with a <tag> in it?`,
    drawing: null,
    options: options(position, choice),
    was: choice,
    again,
  })),
  next: { go: 'hand-in', label: 'Save, and look over it before handing in' },
  before: null,
  sheet: { ...sitting.sheet, cells: cells.map((cell) => ({ ...cell, href: `#q${cell.position}`, current: false })) },
  other: { href: `${root}/1`, label: 'One question at a time' },
};

const handIn: HandInPage['data'] = {
  title: 'Mock paper 7',
  csrf,
  action: `${root}/hand-in`,
  back: `${root}/1`,
  time,
  lead: '9 questions are still blank.',
  blank: [{ href: `${root}/12`, label: '12' }],
  again: [{ href: `${root}/4`, label: '4' }],
  titleBlock,
};

const result: ResultPage['data'] = {
  title: 'Mock paper 7',
  verdict: { sign: 'no', word: '18 of 26: not passed' },
  lead: '1 short of the 19 it takes.',
  late: 'Your last choice came after the end.',
  remarked: 'Marked again on Sat 28 Nov: the key of question 7 was corrected. Before that you had 17.',
  error: 'On about three of four papers like this one you would get between 16 and 20.',
  topics: [{ topic: 'Ladders <high>', right: 1, of: 3 }],
  next: [practise],
  questions: [
    { href: `${root}/review/1`, position: 1, objective: 'LA-02', title: 'The angle of a ladder', yours: 'B', how: 'Right' },
    { href: `${root}/review/2`, position: 2, objective: 'SH-01', title: 'Shock', yours: 'blank', how: 'No answer' },
  ],
  titleBlock,
};

const review: ReviewPage['data'] = {
  options: [
    { letter: 'A', text: '0.8 m', key: false, yours: true, why: 'Divided by six.' },
    { letter: 'B', text: '1.2 m', key: true, yours: false, why: '' },
  ],
  statements: null,
  steps: null,
  pairs: null,
  spare: [],
  drawing: null,
  title: 'Mock paper 7',
  place: 'Question 12 of 20',
  stem: 'How far out do the feet go?',
  verdict: { sign: 'no', word: 'Not right.', fact: '1.2 m.', said: 'A: you chose “0.8 m”.' },
  tellTales: [{ label: 'Divided by six', tell: 'The rule is four up to one out.', danger: true }],
  explanation: 'Four up, one out.',
  working: null,
  caution: { sign: 'general', text: 'Work at height kills.' },
  before: `${root}/review/11`,
  after: `${root}/review/13`,
  result: `${root}/result`,
  practise,
  queryHref: '/queries/new?question=1&revision=1&seed=1&region=uk',
  titleBlock,
};

type Page = PapersPage | CoverPage | SittingPage | HandInPage | ResultPage | ReviewPage;

export const paperPages: readonly { name: string; page: Page }[] = [
  { name: 'papers', page: { view: 'papers/papers', data: papers } },
  { name: 'papers-none', page: { view: 'papers/papers', data: { ...papers, running: [], open: [], done: [], lacking: [] } } },
  { name: 'paper-cover', page: { view: 'papers/cover', data: cover } },
  { name: 'paper-sitting', page: { view: 'papers/sitting', data: sitting } },
  { name: 'paper-sitting-all', page: { view: 'papers/sitting', data: all } },
  { name: 'paper-hand-in', page: { view: 'papers/hand-in', data: handIn } },
  { name: 'paper-result', page: { view: 'papers/result', data: result } },
  {
    name: 'paper-result-passed',
    page: {
      view: 'papers/result',
      data: { ...result, verdict: { sign: 'yes', word: '20 of 26: passed' }, late: null, remarked: null, next: [] },
    },
  },
  { name: 'paper-review', page: { view: 'papers/review', data: review } },
];
