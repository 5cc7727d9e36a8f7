import type { JoinFoundPage, JoinPage, OwnClassesPage } from '../../src/classes/joining-page-types.js';
import type {
  ClassFieldsPart,
  JoinSlipsPage,
  NewClassPage,
  PeoplePage,
  PersonPage,
  SlipsPage,
} from '../../src/classes/people-page-types.js';
import type { QrPart } from '../../src/core/qr-code.js';
import { classTabs } from '../../src/classes/tabs.js';

/** The pages about a class and its people as page data. People and figures are invented. */

const csrf = 'csrf-token';
const titleBlock = [{ label: 'Class', value: 'Thursday beginners', width: 12, name: true, id: false, href: null }] as const;
const plain = (value: string) => ({ value, why: null });
const regions = [
  { value: 'uk', label: 'United Kingdom: 230 V', chosen: true },
  { value: 'na', label: 'North America: 120 V', chosen: false },
];
/** Not a readable code: what it looks like is for the tests of the pages themselves. */
const qr: QrPart = { size: 37, d: 'M4 4h7v1h-7zM14 4h2v1h-2z', address: 'http://192.0.2.10:3000/join/K7QW3MXP' };
const address = { text: 'http://192.0.2.10:3000/join', local: false };
const hereOnly = { text: 'http://localhost:3000/join', local: true };

const fields: ClassFieldsPart = {
  name: plain('Thursday beginners'),
  exam: plain('2026-12-08'),
  paper: {
    choices: [
      { value: '', text: 'None yet', chosen: false },
      { value: 'entry-safety/safety-26', text: 'Safety paper, 19 of 26 to pass (Entry safety)', chosen: true },
    ],
    why: null,
    hint: 'It can be chosen later.',
  },
  meetsOn: {
    choices: [
      { value: '', text: 'No fixed day', chosen: false },
      { value: '4', text: 'Thursday', chosen: true },
    ],
    why: null,
  },
  meetsAt: plain('19:30'),
};

const fresh: NewClassPage['data'] = {
  csrf,
  startToken: '0b9f1c1e-6f0a-4a53-9d6f-0d6f2a3f1b77',
  fields,
  fault: null,
  titleBlock: [...titleBlock],
};

const people: PeoplePage['data'] = {
  csrf,
  root: '/classes/3/people',
  name: 'Thursday beginners',
  tabs: classTabs(3, '/people'),
  fault: null,
  said: null,
  lead: '3 candidates; 2 tutors; Thursdays, 19:30; exam on Tuesday 8 December 2026.',
  leaving: [{ name: 'Mungo <Tarn>', on: '12 Dec 2026', keep: '/classes/3/people/9/keep' }],
  members: [
    { href: '/classes/3/people/7', name: 'H. <Vane>', joined: 'Tuesday 24 November 2026', seen: 'never yet' },
    { href: '/classes/3/people/8', name: 'Bartholomew Featherstonehaugh-Wobblington', joined: 'Tuesday 3 November 2026', seen: 'today' },
  ],
  ended: false,
  endAction: '/classes/3/people/end',
  add: { action: '/classes/3/people/add', token: '0b9f1c1e-6f0a-4a53-9d6f-0d6f2a3f1b77', names: plain(''), regions },
  code: { fours: 'K7QW 3MXP', until: 'Wednesday 2 December 2026 at 19:30', address, qr, printHref: '/classes/3/people/join-slips' },
  codeNote: null,
  codeAction: '/classes/3/people/code',
  days: [
    { value: '1', text: 'for one day', chosen: false },
    { value: '7', text: 'for a week', chosen: true },
  ],
  tutors: [
    { name: 'Alma Thrupp', role: 'Administrator', id: '1', you: true, remove: '/classes/3/people/tutors/remove' },
    { name: 'H. <Vane>', role: 'Tutor', id: '2', you: false, remove: '/classes/3/people/tutors/remove' },
  ],
  tutorAction: '/classes/3/people/tutors',
  otherStaff: [{ value: '4', text: 'Tessa (Tutor)', chosen: false }],
  classAction: '/classes/3/people/class',
  fields,
  fieldsOpen: false,
  titleBlock: [...titleBlock],
};

const person: PersonPage['data'] = {
  csrf,
  name: 'H. <Vane>',
  className: 'Thursday beginners',
  back: '/classes/3/people',
  tabs: classTabs(3, '/people'),
  removeWholly: '/people/9/remove',
  facts: [
    'In the class since Tuesday 3 November 2026.',
    'Last here: 4 days ago.',
    'A new return slip was last made on Tuesday by Alma Thrupp.',
  ],
  slipAction: '/classes/3/people/7/slip',
  before: '2026-11-24T18:40:00.000Z',
  moveAction: '/classes/3/people/7/move',
  others: [{ value: '5', text: 'Saturday refreshers', chosen: false }],
  removeAction: '/classes/3/people/7/remove',
  titleBlock: [...titleBlock],
};

const slips: SlipsPage['data'] = {
  className: 'Thursday beginners',
  back: '/classes/3/people',
  kept: '/classes/3/people/slips/kept',
  slips: ['H. <Vane>', 'Bartholomew Featherstonehaugh-Wobblington'].map((name) => ({
    name,
    words: ['copper', 'window', 'gentle', 'marble', 'sunday', 'planet', 'kettle'],
  })),
  heading: '2 return slips',
  address: { text: 'http://localhost:3000/return', local: true },
  qr,
  foot: 'Thursday beginners. Made on Tuesday 24 November 2026 by Alma Thrupp.',
  titleBlock: [...titleBlock],
};

const joinSlips: JoinSlipsPage['data'] = {
  className: 'Thursday beginners',
  back: '/classes/3/people',
  action: '/classes/3/people/join-slips',
  slip: {
    meeting: 'Thursdays, 19:30',
    tutors: 'Alma Thrupp and H. <Vane>',
    fours: 'K7QW 3MXP',
    until: 'Wednesday 2 December 2026 at 19:30',
    address: hereOnly,
    qr,
  },
  copies: [
    { value: '4', text: '4 slips', chosen: true },
    { value: '8', text: '8 slips', chosen: false },
  ],
  places: [0, 1, 2, 3],
  titleBlock: [...titleBlock],
};

const join: JoinPage['data'] = { csrf, code: plain(''), kept: null, who: { visitor: true, staff: false } };

const found: JoinFoundPage['data'] = {
  csrf,
  code: 'K7QW3MXP',
  name: 'H. <Vane>’s class',
  facts: ['Tutors: Alma Thrupp and H. <Vane>.', 'It meets on Thursdays, 19:30.'],
  start: { startToken: '0b9f1c1e-6f0a-4a53-9d6f-0d6f2a3f1b77', name: plain(''), regions },
  join: false,
  already: false,
  staff: false,
  titleBlock: [...titleBlock],
};

const mine: OwnClassesPage['data'] = {
  csrf,
  said: { word: 'You are in the class.', text: 'Your tutors see from now on how you are getting on.' },
  classes: [
    {
      name: 'Thursday beginners',
      tutors: 'Tutors: Alma Thrupp and H. <Vane>.',
      facts: 'You are in it since Tuesday 24 November 2026; Thursdays, 19:30',
      leave: '/my-classes/3/leave',
      ended: false,
    },
    {
      name: 'Spring course',
      tutors: 'It has no tutor just now.',
      facts: 'You are in it since Sunday 1 March 2026',
      leave: '/my-classes/2/leave',
      ended: true,
    },
  ],
  slip: { by: 'H. <Vane>', on: 'Tuesday 24 November 2026' },
  titleBlock: [...titleBlock],
};

const dead = 'No class can be joined by this code. Look at each letter again.';
const twice = '“Odo” stands there twice. Tell them apart, such as by the first letter of the surname.';

type PeoplePages = NewClassPage | PeoplePage | PersonPage | SlipsPage | JoinSlipsPage | JoinPage | JoinFoundPage | OwnClassesPage;

export const peoplePages: readonly { name: string; page: PeoplePages }[] = [
  { name: 'class-new', page: { view: 'classes/new', data: fresh } },
  {
    name: 'class-new-fault',
    page: {
      view: 'classes/new',
      data: {
        ...fresh,
        fields: {
          ...fields,
          exam: { value: '2025-12-08', why: 'That day has passed.' },
          meetsOn: { ...fields.meetsOn, why: 'Choose the day too.' },
          paper: { ...fields.paper, why: 'That paper is no longer in the bank.' },
        },
        fault: { why: 'That day has passed.', target: 'exam' },
      },
    },
  },
  { name: 'people', page: { view: 'classes/people', data: people } },
  {
    name: 'people-empty',
    page: {
      view: 'classes/people',
      data: {
        ...people,
        said: { word: 'The class is made.', text: 'Now bring candidates in.' },
        members: [],
        leaving: [],
        code: null,
        tutors: people.tutors.slice(0, 1).map((tutor) => ({ ...tutor, remove: null })),
        otherStaff: [],
      },
    },
  },
  {
    name: 'people-ended',
    page: { view: 'classes/people', data: { ...people, ended: true, code: null, codeNote: 'The code K7QW 3MXP ran out.' } },
  },
  {
    name: 'people-code-over',
    page: { view: 'classes/people', data: { ...people, code: null, codeNote: 'The code K7QW 3MXP ran out.' } },
  },
  {
    name: 'people-names-fault',
    page: {
      view: 'classes/people',
      data: { ...people, fault: { why: twice, target: 'names' }, add: { ...people.add, names: { value: 'Odo\nOdo', why: twice } } },
    },
  },
  {
    name: 'people-class-fault',
    page: {
      view: 'classes/people',
      data: {
        ...people,
        fault: { why: 'This is no time of day.', target: 'meetsAt' },
        fields: { ...fields, meetsAt: { value: 'evening', why: 'This is no time of day.' } },
        fieldsOpen: true,
      },
    },
  },
  { name: 'people-person', page: { view: 'classes/people-person', data: person } },
  { name: 'people-person-alone', page: { view: 'classes/people-person', data: { ...person, before: '', others: [] } } },
  { name: 'slips', page: { view: 'classes/slips', data: slips } },
  { name: 'slips-none', page: { view: 'classes/slips', data: { ...slips, slips: [], heading: 'No slip to show' } } },
  { name: 'join-slips', page: { view: 'classes/join-slips', data: joinSlips } },
  { name: 'join-slips-none', page: { view: 'classes/join-slips', data: { ...joinSlips, slip: null, places: [] } } },
  { name: 'join', page: { view: 'classes/join', data: join } },
  {
    name: 'join-fault',
    page: { view: 'classes/join', data: { ...join, code: { value: 'k7qw', why: dead }, kept: { name: 'H. <Vane>', region: 'uk' } } },
  },
  { name: 'join-staff', page: { view: 'classes/join', data: { ...join, who: { visitor: false, staff: true } } } },
  { name: 'join-found', page: { view: 'classes/join-found', data: found } },
  {
    name: 'join-found-fault',
    page: {
      view: 'classes/join-found',
      data: { ...found, start: { startToken: '', regions, name: { value: '', why: 'Write what you want to be called.' } } },
    },
  },
  { name: 'join-found-candidate', page: { view: 'classes/join-found', data: { ...found, start: null, join: true } } },
  { name: 'join-found-already', page: { view: 'classes/join-found', data: { ...found, start: null, already: true } } },
  { name: 'join-found-staff', page: { view: 'classes/join-found', data: { ...found, start: null, staff: true } } },
  { name: 'my-classes', page: { view: 'classes/mine', data: mine } },
  { name: 'my-classes-none', page: { view: 'classes/mine', data: { ...mine, said: null, classes: [], slip: null } } },
];
