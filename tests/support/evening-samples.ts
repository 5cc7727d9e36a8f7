import { answeredPart } from '../../src/core/tasks/answered-part.js';
import type { ShownOption } from '../../src/core/marking.js';
import { classTabs } from '../../src/classes/index.js';
import type { AnswerPage, ControlPage, KeyPart, ListPage, LivePart, OpenPage, ScreenPage } from '../../src/evenings/page-types.js';
import { field } from '../../src/study/index.js';

/** The pages of a class evening as page data. */

const csrf = 'token';
const uuid = '6f1c2d3e-0000-4000-8000-000000000007';
const root = `/classes/4/evenings/${uuid}`;
const tabs = classTabs(4, '/evenings');
const titleBlock = [field('Class', 'Thursday <beginners>', 6, { name: true }), field('Tutor', 'H. <Vane>', 6)];
const plain = (value: string) => ({ value, why: null });
const live: LivePart = { page: root, events: `${root}/events`, seen: '17 9', say: 'Open for answers on phones.' };

const texts = ['Trip at once', 'Hold the current to 30 mA', 'Probably nothing: what goes out also comes back', 'Trip after the <fuse>'];
const options = texts.map((text, index) => ({ letter: 'ABCD'.charAt(index), text }));
const shownOptions = texts.map((text, index): ShownOption => ({
  value: String(index),
  text,
  key: index === 2,
  why: index === 2 ? '' : 'It looks likely.',
  tellTale: null,
}));
const task = { kind: 'choice' as const, options: shownOptions, draw: null };
const stem = 'Standing on a dry floor, Mungo touches live with one hand and neutral with the other. What will the 30 mA RCD do?';
const caution = { sign: 'electric', text: 'Never try this out.' } as const;
const key: KeyPart = {
  fact: `C: ${texts[2]}.`,
  answered: answeredPart(task, null, null),
  explanation: 'An RCD compares what goes out with what comes back.',
  working: null,
};
const working: NonNullable<KeyPart['working']> = {
  words: 'Power is voltage times current.',
  mathml: ['<math displaystyle="true"><mi>P</mi></math>'],
  steps: ['Put the numbers in: 230 V × 4 A = 920 W.'],
  accept: 'Within 2 %.',
  calculator: null,
};

const list: ListPage['data'] = {
  tabs,
  className: 'Thursday <beginners>',
  csrf,
  action: '/classes/4/evenings',
  id: uuid,
  running: { href: root, text: 'Go on with Ladders & <fuses>' },
  evenings: [
    { href: root, title: 'Ladders & <fuses>', state: 'running, question 3 of 6', questions: 6 },
    { href: `${root.slice(0, -1)}8`, title: 'Autumn', state: 'held Thu 19 Nov', questions: 20 },
  ],
  title: plain('Evening of Thu 26 Nov'),
  questions: plain('LA-02-001 FU-08-003'),
  count: plain('6'),
  regions: [{ value: 'uk', text: 'United Kingdom, 230 V', chosen: true }],
  topics: [{ name: 'topic-LA', text: 'LA Ladders', ticked: false }],
  unfolded: false,
  leftOut: '1 question of the plan is left out.',
  fault: null,
  titleBlock,
};

const control: ControlPage['data'] = {
  tabs,
  className: 'Thursday <beginners>',
  csrf,
  title: 'Ladders & <fuses>',
  live,
  headline: 'Ladders & <fuses>: question 3 of 6',
  state: 'Open for answers on phones.',
  answered: '9 of 12 have answered.',
  said: null,
  fault: null,
  action: `${root}/step`,
  seen: 3,
  go: { step: 'close', label: 'Close the question' },
  more: [],
  end: true,
  hands: {
    fields: options.map(({ letter }) => ({ letter, id: `hand-${letter}`, name: `hand-${letter}`, value: '', wrong: false })),
    was: ',,,',
  },
  asked: { stem, drawing: null, options },
  key,
  counts: null,
  caution,
  list: [
    { href: '/bank/questions/3', position: 1, code: 'LA-02', objective: 'The right <angle>', state: '7 of 12 right', current: false },
    { href: '/bank/questions/4', position: 2, code: 'FU-08', objective: 'What an RCD cannot do', state: 'open', current: true },
  ],
  results: [],
  back: '/classes/4/evenings',
  screen: `${root}/screen`,
  phones: 'https://club.example/evening',
  titleBlock,
};

const screen: ScreenPage['data'] = {
  title: 'Ladders & <fuses>',
  place: 'Question 3 of 6',
  live,
  headline: null,
  stem,
  drawing: null,
  options: options.map((option) => ({ ...option, bar: null, key: false })),
  state: 'Open for answers. 9 of 12 have answered.',
  reason: [],
  caution,
  phones: 'https://club.example/evening',
  back: root,
  titleBlock,
};

const answer: AnswerPage['data'] = {
  title: 'Ladders & <fuses>',
  place: 'Question 3 of 6',
  live: { page: `/evening/${uuid}`, events: `/evening/${uuid}/events`, seen: '17', say: 'The tutor opened question 3.' },
  csrf,
  action: `/evening/${uuid}/answer`,
  seen: 3,
  headline: null,
  lead: null,
  stem,
  drawing: null,
  options: options.map((option) => ({ ...option, chosen: option.letter === 'C' })),
  open: true,
  own: 'Your answer: C. You can change it until the tutor closes the question.',
  late: null,
  shown: null,
  summary: [],
  caution,
  again: `/evening/${uuid}`,
  back: null,
  titleBlock,
};
const silent: Partial<AnswerPage['data']> = { stem: null, options: [], open: false, own: null, caution: null };

type Page = ListPage | ControlPage | ScreenPage | AnswerPage | OpenPage;
const lists = (name: string, data: Partial<ListPage['data']>) => ({
  name,
  page: { view: 'evenings/list' as const, data: { ...list, ...data } },
});
const controls = (name: string, data: Partial<ControlPage['data']>) => ({
  name,
  page: { view: 'evenings/control' as const, data: { ...control, ...data } },
});
const screens = (name: string, data: Partial<ScreenPage['data']>) => ({
  name,
  page: { view: 'evenings/screen' as const, data: { ...screen, ...data } },
});
const answers = (name: string, data: Partial<AnswerPage['data']>) => ({
  name,
  page: { view: 'evenings/answer' as const, data: { ...answer, ...data } },
});

export const eveningPages: readonly { name: string; page: Page }[] = [
  lists('evenings', {}),
  lists('evenings-none', { running: null, evenings: [], topics: [], leftOut: null }),
  lists('evenings-fault', {
    running: null,
    title: { value: '', why: 'Give it a name, such as Ladders and fuses.' },
    questions: { value: 'LA-99', why: '“LA-99” is no question, objective or topic of the bank.' },
    count: { value: 'x', why: 'Write a whole number from 1 to 20.' },
    unfolded: true,
    fault: { why: 'Give it a name, such as Ladders and fuses.', target: 'title' },
  }),
  controls('evening-control', {}),
  controls('evening-control-ready', {
    answered: null,
    seen: 0,
    go: { step: 'next', label: 'Begin: put up question 1' },
    hands: null,
    asked: null,
    key: null,
    caution: null,
    phones: null,
  }),
  controls('evening-control-shown', {
    said: 'Another page had moved on, so nothing was changed. This is how it stands.',
    go: { step: 'next', label: 'Next question' },
    more: [{ step: 'back', label: 'Question before' }],
    key: { ...key, explanation: null, working },
    counts: {
      rows: [
        { letter: 'A', count: 3, width: '60%', key: false },
        { letter: 'C', count: 5, width: '100%', key: true },
      ],
      total: '6 on phones and 2 hands.',
    },
  }),
  controls('evening-control-fault', {
    fault: { why: '“x” is no number of hands: write 0 to 999.', target: 'hand-B' },
    hands: {
      fields: options.map(({ letter }) => ({
        letter,
        id: `hand-${letter}`,
        name: `hand-${letter}`,
        value: letter === 'B' ? 'x' : '1',
        wrong: letter === 'B',
      })),
      was: ',,,',
    },
  }),
  controls('evening-control-over', {
    answered: null,
    go: null,
    end: false,
    hands: null,
    asked: null,
    key: null,
    caution: null,
    list: [],
    results: [
      {
        href: '/bank/questions/3',
        position: 1,
        code: 'LA-02',
        objective: 'The right <angle>',
        right: '7 of 12 right',
        counts: 'A 5, B 7 (right)',
      },
    ],
  }),
  screens('evening-screen', {}),
  screens('evening-screen-before', { headline: 'We begin in a moment', stem: null, options: [], state: null, caution: null }),
  screens('evening-screen-shown', {
    options: options.map((option, index) => ({ ...option, bar: { count: index, width: `${index * 33}%` }, key: index === 2 })),
    state: '6 on phones and 3 hands.',
    reason: [key.explanation ?? ''],
    phones: null,
  }),
  answers('evening-answer', {}),
  answers('evening-answer-closed', { open: false, late: 'The question was closed before B came, so it was not taken.' }),
  answers('evening-answer-wait', { ...silent, headline: 'Ladders & <fuses> has not begun yet', lead: 'Keep this page open.' }),
  answers('evening-answer-right', {
    shown: {
      verdict: { sign: 'yes', word: 'Right.', fact: `${texts[2]}.`, said: 'C: you chose it.' },
      fact: key.fact,
      tellTales: [],
      query: '/queries/new?question=3',
      key: { ...key, answered: answeredPart(task, null, '2') },
    },
  }),
  answers('evening-answer-wrong', {
    shown: {
      verdict: { sign: 'no', word: 'Not right.', fact: `The right answer: ${texts[2]}.`, said: 'A: you chose another.' },
      fact: key.fact,
      tellTales: [{ label: 'Divided', tell: 'Multiply volts by amperes.', danger: true }],
      query: '/queries/new?question=3',
      key: { ...key, explanation: null, working },
    },
    again: null,
    back: { href: `/evening/${uuid}`, text: 'Back to the evening' },
  }),
  answers('evening-answer-none', { shown: { verdict: null, fact: key.fact, tellTales: [], key, query: '/queries/new?question=3' } }),
  answers('evening-answer-over', {
    ...silent,
    headline: 'This evening is over',
    lead: 'You answered 5 of 6 on your phone, 3 of them right.',
    summary: [{ href: `/evening/${uuid}/1`, position: 1, code: 'LA-02', objective: 'The right <angle>', own: 'C, right' }],
    again: null,
    back: { href: '/', text: 'Go to Now' },
  }),
  {
    name: 'evening-open',
    page: {
      view: 'evenings/open',
      data: {
        headline: 'Which evening are you at?',
        lead: '',
        evenings: [{ href: `/evening/${uuid}`, text: 'Ladders & <fuses>', className: 'Thursday <beginners>', state: 'question 2 of 6' }],
        titleBlock,
      },
    },
  },
  {
    name: 'evening-open-none',
    page: {
      view: 'evenings/open',
      data: { headline: 'No class evening is on', lead: 'When your tutor begins one, it opens here.', evenings: [], titleBlock },
    },
  },
];
