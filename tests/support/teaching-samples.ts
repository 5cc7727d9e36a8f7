import type { CellPage, ClassesPage, ClubPage, GridPage, PlanPage } from '../../src/teaching/page-types.js';
import { outlookPart } from '../../src/teaching/grid-parts.js';
import { classTabs } from '../../src/classes/tabs.js';
import { field } from '../../src/study/index.js';

/** The pages that tell a tutor how a class stands, as page data. People and figures are invented. */

const titleBlock = [field('Tutor', 'H. <Vane>', 12, { name: true })];

const classes: ClassesPage['data'] = {
  heading: 'Classes',
  warnings: [{ what: 'The last good backup is 3 days old.' }],
  classes: [
    {
      name: 'Thursday <beginners>',
      facts: '12 candidates; Thursdays, 19:30; exam on Tuesday 8 December 2026',
      needs: '2 candidates not here for a week; 3 sure of something wrong.',
      helpHref: '/classes/1',
      teachHref: '/classes/1/plan',
      badHref: '/classes/1/questions',
      peopleHref: '/classes/1/people',
    },
    {
      name: 'Saturday refreshers',
      facts: '0 candidates; no exam date yet',
      needs: null,
      helpHref: '/classes/2',
      teachHref: '/classes/2/plan',
      badHref: '/classes/2/questions',
      peopleHref: '/classes/2/people',
    },
  ],
  ended: [{ name: 'Spring course', href: '/classes/3' }],
  newHref: '/classes/new',
  clubHref: '/club',
  analyseHref: '/analyse',
  staffHref: '/staff',
  titleBlock,
};

const noClasses: ClassesPage['data'] = { ...classes, warnings: [], classes: [], ended: [], staffHref: null };

const topics = ['Shock', 'Before you open anything', 'Earths'].map((title, index) => ({
  code: ['SH', 'WK', 'EA'][index] ?? '',
  title,
  item: index === 2 ? 1 : null,
  href: '/classes/1?order=SH',
  sorted: index === 0,
}));

const cells: GridPage['data']['rows'][number]['cells'] = (['low', 'few', 'none'] as const).map((level, index) => ({
  figure: ['41', 'few', '–'][index] ?? '',
  level,
  share: `${[8, 2, 0][index]}/20`,
  href: '/classes/1/members/4/topics/SH',
  words: 'Ivo Crackthorn, Shock: 41 per cent, 8 of 20 questions asked',
}));

const grid: GridPage['data'] = {
  tabs: classTabs(1, ''),
  name: 'Thursday <beginners>',
  meeting: 'Next meeting: Thursday 26 November 2026, 19:30',
  lead: 'Each figure is the chance, per cent, that the candidate would recall what the topic asks.',
  note: { text: 'No paper is chosen for this class yet.', href: '/classes/1/people', label: 'Choose the paper' },
  days: [
    { href: '/classes/1', text: 'today', current: true },
    { href: '/classes/1?on=exam', text: 'on Tue 8 Dec, if nobody studied till then', current: false },
  ],
  figures: [{ href: '/classes/1?of=asked', text: 'only those asked so far', current: false }],
  orders: [
    { href: '/classes/1', text: 'most in need first', current: true },
    { href: '/classes/1?order=name', text: 'by name', current: false },
  ],
  topics,
  rows: [
    {
      name: 'Ivo <Crackthorn>',
      needs: 'last here 9 days ago; sure and wrong on 2',
      outlook: outlookPart({ low: 0.14, high: 0.52 }),
      cells,
    },
    { name: 'Bartholomew Featherstonehaugh-Wobblington', needs: null, outlook: null, cells },
  ],
  means: [
    { figure: '72', level: 'mid' },
    { figure: '88', level: 'high' },
    { figure: '–', level: 'none' },
  ],
  plan: [
    { number: 1, title: 'RF earth is <not> a safety earth', text: '7 of 12 chose “It earths the mains as well”, 3 of them sure.' },
    { number: 2, title: 'The right angle', text: 'Costs a candidate about 0.42 marks on the paper (from 0.10 to 0.71).' },
  ],
  planHeading: 'What to teach on Thursday',
  planHref: '/classes/1/plan',
  badHref: '/classes/1/questions',
  aside: 'Ivo Crackthorn: ladders, and fuses.',
  away: [{ name: 'Perpetua Moss', seen: '9 days ago' }],
  mistakes: [{ href: '/bank/questions/7', code: 'FQ-EA-03-002', stem: 'Is an RF earth <enough>?', names: 'Ivo Crackthorn, Perpetua Moss' }],
  titleBlock,
};

const emptyGrid: GridPage['data'] = {
  ...grid,
  lead: 'Nobody is in this class yet.',
  note: null,
  days: [],
  rows: [],
  plan: [],
  planHeading: 'What to teach next',
  aside: null,
  away: [],
  mistakes: [],
};

const plan: PlanPage['data'] = {
  tabs: classTabs(1, '/plan'),
  name: 'Thursday <beginners>',
  heading: 'What to teach on Thursday',
  lead: 'The objectives that would cost the class most on its paper, as things stand: together 1.3 marks a candidate.',
  note: null,
  items: [
    {
      number: 1,
      title: 'RF earth is <not> a safety earth',
      where: 'EA-03, Earths. About 20 minutes.',
      costs: 'Costs a candidate about 0.42 marks on the paper (from 0.10 to 0.71). Rests on 84 questions met by 9 of 12.',
      mistakes: ['7 of 12 chose “It earths the mains as well”, 3 of them sure.'],
      warned: [],
      mustKnow: 'Know that an RF earth is for radio and does not make the mains safe at 230 V.',
    },
    {
      number: 2,
      title: 'The right angle',
      where: 'LA-02, Ladders. About 20 minutes.',
      costs: 'Costs a candidate about 0.30 marks on the paper (from 0.10 to 0.71). Rests on 20 questions met by 3 of 12.',
      mistakes: [],
      warned: ['The steeper the safer'],
      mustKnow: 'One out for four up.',
    },
  ],
  opener: [
    { href: '/bank/questions/7', code: 'FQ-EA-03-002', stem: 'Is an RF earth <enough>?', wrong: '7 had it wrong last time' },
    { href: '/bank/questions/8', code: 'FQ-LA-02-001', stem: 'How far out?', wrong: '' },
  ],
  eveningHref: '/classes/1/evenings?questions=7,8',
  practical: {
    title: 'Set and secure a ladder',
    minutes: 15,
    brings: ['a ladder on firm ground', 'a <strap>'],
    showing: ['Set its foot one out for four up.'],
    href: '/classes/1/skills',
  },
  aside: ['Ivo Crackthorn: ladders, and fuses.'],
  unsure: [{ code: 'OU-07', title: 'Generators', answers: 'never asked' }],
  cautions: [{ sign: 'electric', text: 'Adding or changing any earth is for a competent electrician.' }],
  titleBlock,
};

const emptyPlan: PlanPage['data'] = {
  ...plan,
  heading: 'What to teach next',
  lead: 'Too few answers to tell.',
  note: { text: 'No pack on this server has a make-up of papers.', href: '/packs', label: 'Look at the packs' },
  items: [],
  opener: [],
  eveningHref: null,
  practical: null,
  aside: [],
  unsure: [],
  cautions: [],
};

const cell: CellPage['data'] = {
  tabs: classTabs(1, ''),
  heading: 'Ivo <Crackthorn>: Earths',
  lead: 'Of 2 questions asked, about 61 % would be recalled today.',
  backHref: '/classes/1',
  rows: [
    {
      href: '/bank/questions/7',
      code: 'FQ-EA-03-002',
      stem: 'Is an RF earth <enough>?',
      recall: '48 %',
      surelyWrong: true,
      answers: ['Tue 24 Nov: not right: chose “It earths the mains as well”, sure', 'Fri 20 Nov: right, guessing'],
    },
  ],
  unmet: [{ href: '/bank/questions/9', code: 'FQ-EA-04-001', stem: 'Who may <change> it?' }],
  titleBlock,
};

const club: ClubPage['data'] = {
  lead: 'Each figure is the chance, per cent, that somebody would recall what the topic asks.',
  topics: topics.map(({ code, title }) => ({ code, title })),
  rows: [
    {
      name: 'Thursday <beginners>',
      href: '/classes/1',
      people: '12 candidates',
      cells: (['low', 'mid', 'none'] as const).map((level) => ({ figure: '41', level, words: 'Thursday beginners, Shock: 41 per cent' })),
    },
    {
      name: 'Everybody here',
      href: null,
      people: 'worked out once a day',
      cells: (['high', 'mid', 'none'] as const).map((level) => ({ figure: '81', level, words: 'Everybody, Shock: 81 per cent' })),
    },
  ],
  titleBlock,
};

const of = <P>(name: string, page: P, title: string, layout: 'one' | 'two' | 'wide' = 'one') => ({ name, page, title, layout });

export const teachingPages = [
  of('classes', { view: 'home/tutor', data: classes } satisfies ClassesPage, 'Classes'),
  of('classes-none', { view: 'home/tutor', data: noClasses } satisfies ClassesPage, 'Classes'),
  of('class-grid', { view: 'teaching/grid', data: grid } satisfies GridPage, 'Who needs help', 'wide'),
  of('class-grid-empty', { view: 'teaching/grid', data: emptyGrid } satisfies GridPage, 'Who needs help', 'wide'),
  of('class-plan', { view: 'teaching/plan', data: plan } satisfies PlanPage, 'What to teach on Thursday', 'wide'),
  of('class-plan-empty', { view: 'teaching/plan', data: emptyPlan } satisfies PlanPage, 'What to teach next', 'wide'),
  of('class-cell', { view: 'teaching/cell', data: cell } satisfies CellPage, 'Ivo: Earths'),
  of('club', { view: 'teaching/club', data: club } satisfies ClubPage, 'All classes', 'wide'),
];
