import { answeredPart, givenWords, keyWords, scoreWords } from '../../src/core/tasks/answered-part.js';
import { askedPart } from '../../src/core/tasks/asked-part.js';
import { showFixed } from '../../src/core/tasks/index.js';
import { emptyEntry } from '../../src/core/tasks/task.js';
import { sampleOf, twoShapes } from './kind-samples.js';
import type { MePage, PhrasePage, ReturnPage, SetPasswordPage, SignInPage, WelcomePage } from '../../src/accounts/page-types.js';
import type { StaffPage } from '../../src/accounts/staff-page-types.js';
import { accountPages } from './account-samples.js';
import type { Chrome, TitleField } from '../../src/core/page-parts.js';
import type { NowPage, OutcomePage, QuestionPage, RoundEndPage } from '../../src/study/page-types.js';
import type { AboutPage, ErrorPage } from '../../src/web/page-types.js';
import { calculatorPages } from './calculator-samples.js';
import { bankPages } from './bank-samples.js';
import { packPages } from './pack-samples.js';
import { outlookPages } from './outlook-samples.js';
import { entryPages } from './entry-samples.js';
import { eveningPages } from './evening-samples.js';
import { progressPages } from './progress-samples.js';
import { questionAnalysisPages } from './question-analysis-samples.js';
import { skillPages } from './skill-samples.js';
import { classPaperPages } from './class-paper-samples.js';
import { paperPages } from './paper-samples.js';
import { personalDataPages } from './personal-data-samples.js';
import { planPages } from './plan-samples.js';
import { peoplePages } from './people-samples.js';
import { printPages } from './print-samples.js';
import { tablePages } from './table-samples.js';
import { reportPages } from './reports-samples.js';
import { teachingPages } from './teaching-samples.js';
import { upkeepPages } from './upkeep-samples.js';

/** Made-up data for every page, several states of each, typed by the page types. People and figures are invented. */

export type AnyPage =
  | (typeof calculatorPages)[number]['page']
  | (typeof paperPages)[number]['page']
  | (typeof classPaperPages)[number]['page']
  | (typeof bankPages)[number]['page']
  | (typeof packPages)[number]['page']
  | (typeof questionAnalysisPages)[number]['page']
  | (typeof outlookPages)[number]['page']
  | (typeof progressPages)[number]['page']
  | (typeof eveningPages)[number]['page']
  | (typeof entryPages)[number]['page']
  | (typeof planPages)[number]['page']
  | (typeof skillPages)[number]['page']
  | (typeof peoplePages)[number]['page']
  | (typeof printPages)[number]['page']
  | (typeof accountPages)[number]['page']
  | AboutPage
  | ErrorPage
  | MePage
  | NowPage
  | OutcomePage
  | PhrasePage
  | QuestionPage
  | ReturnPage
  | RoundEndPage
  | SetPasswordPage
  | SignInPage
  | StaffPage
  | (typeof tablePages)[number]['page']
  | (typeof teachingPages)[number]['page']
  | (typeof upkeepPages)[number]['page']
  | (typeof reportPages)[number]['page']
  | (typeof personalDataPages)[number]['page']
  | WelcomePage;

export interface Sample {
  name: string;
  page: AnyPage;
  chrome: Chrome;
}

const csrf = 'dGhpcyBpcyBhIHRva2Vu-_.1';
const token = '0b9f1c1e-6f0a-4a53-9d6f-0d6f2a3f1b77';

function field(label: string, value: string, width: TitleField['width'], more: Partial<TitleField> = {}): TitleField {
  return { label, value, width, name: false, id: false, href: null, ...more };
}

const questionBlock: TitleField[] = [
  field('Objective', 'FU-08 What an RCD cannot do', 8, { name: true }),
  field('Kind', 'Single best answer', 4),
  field('Question', 'FU-08-003', 3, { id: true }),
  field('Revision', '2', 2),
  field('Checked on', '12 Oct 2026', 3),
  field('Source', 'BS EN 61008-1', 4, { href: 'https://example.org/61008' }),
  field('Pack and licence', 'Safety core 0.1.0, CC BY-SA 4.0', 12),
];

const familyBlock: TitleField[] = [
  field('Objective', 'LA-02 The right angle', 8, { name: true }),
  field('Kind', 'Numeric, fresh numbers', 4),
  field('Family', 'How far out the ladder’s feet go', 4),
  field('Revision', '3', 2),
  field('Draw', '4071822319', 2, { id: true }),
  field('Checked on', '3 Nov 2026', 4),
  field('Source', 'HSE INDG455; 29 CFR 1926.1053', 6),
  field('Pack and licence', 'Safety core 0.1.0, CC BY-SA 4.0', 6),
];

const personBlock: TitleField[] = [
  field('Candidate', 'Zelda Marrow', 4, { name: true }),
  field('Class', 'Thursday beginners', 4),
  field('Club', 'Nether Wobbling Radio Club', 4),
  field('Pack', 'Safety core, version 0.1.0', 6),
  field('Region', 'UK, 230 V', 3),
  field('As of', '24 Nov 2026, 18:40', 3),
];

const serverBlock: TitleField[] = [field('Packs', 'Safety core, version 0.1.0', 8, { name: true }), field('Licence', 'CC BY-SA 4.0', 4)];

const nav = (current: string): Chrome['nav'] =>
  [
    { href: '/', label: 'Now' },
    { href: '/calculators', label: 'Calculators' },
    { href: '/about', label: 'About' },
  ].map((item) => ({ ...item, current: item.label === current }));

function chrome(title: string, more: Partial<Chrome> = {}): Chrome {
  return {
    title,
    layout: 'one',
    nav: nav('Now'),
    you: { name: 'Zelda Marrow', href: '/me' },
    scripts: [],
    styles: [],
    plainHttp: false,
    ...more,
  };
}

const visitor = {
  nav: [
    { href: '/', label: 'Start', current: true },
    { href: '/calculators', label: 'Calculators', current: false },
    { href: '/about', label: 'About', current: false },
  ],
  you: null,
};

const electric = {
  sign: 'electric',
  text: 'Never try this out. Follow local codes. Fixed wiring, sockets, switchgear and supply earthing must be left to a competent electrician.',
} as const;

const height = {
  sign: 'general',
  text: 'Work at height kills. Avoid it if you can. Follow the ladder maker’s instructions and local rules, never work alone, and use a competent contractor for anything beyond a short, light task.',
} as const;

const choice: QuestionPage['data'] = {
  lead: null,
  statements: null,
  steps: null,
  pairs: null,
  rights: [],
  places: null,
  drawing: null,
  topicTitle: 'Fuses, current and RCDs',
  position: 4,
  total: 14,
  action: '/study/answer',
  token,
  csrf,
  stem: 'Mungo’s bench sockets are protected by a 30 mA RCD. Standing on a dry wooden floor, he touches a live terminal with one hand and a neutral terminal with the other. What will the RCD do?',
  retryLead: null,
  options: [
    { letter: 'A', value: 'a', text: 'Trip at once, since more than 30 mA is flowing', chosen: false },
    { letter: 'B', value: 'b', text: 'Hold the current to 30 mA until he lets go', chosen: false },
    { letter: 'C', value: 'c', text: 'Probably nothing: what goes out also comes back', chosen: false },
    { letter: 'D', value: 'd', text: 'Trip, but only after the plug fuse has blown', chosen: false },
  ],
  entry: null,
  optionsWhy: null,
  optionsTarget: 'certainty',
  caution: electric,
  titleBlock: questionBlock,
};

const entry: NonNullable<QuestionPage['data']['entry']> = {
  label: 'Distance from the wall',
  unit: 'm',
  unitSpoken: 'metres',
  readsUnit: 'm',
  hint: 'Two figures or more. For example 0.9, 0.9 m or 90 cm.',
  value: '',
  why: null,
};

const typed: QuestionPage['data'] = {
  ...choice,
  topicTitle: 'Ladders and working at height',
  position: 6,
  stem: 'The top of Juniper Flint’s ladder rests against the wall 4.8 m above level ground. How far from the wall should its feet stand?',
  options: null,
  entry,
  caution: height,
  titleBlock: familyBlock,
};

const longText =
  'A visitor at the Nether Wobbling field day has plugged a kettle, a soldering station, two battery chargers and a linear amplifier into one extension lead that is still wound on its drum, and the drum feels warm after ten minutes although the fuse in its plug has not blown. ';

const math = (inside: string): string => `<math displaystyle="true">${inside}</math>`;

const ladderMath = [
  math('<mi>b</mi><mo>=</mo><mfrac><mi>h</mi><mn>4</mn></mfrac>'),
  math(
    '<mi>b</mi><mo>=</mo><mfrac><mrow><mn>4.8</mn><mspace width="0.2em"/><mtext>m</mtext></mrow><mn>4</mn></mfrac><mo>=</mo><mrow class="sum"><mn>1.20</mn><mspace width="0.2em"/><mtext>m</mtext></mrow>',
  ),
];

const outcome: OutcomePage['data'] = {
  topicTitle: 'Ladders and working at height',
  position: 6,
  total: 14,
  stem: typed.stem,
  verdict: { sign: 'no', word: 'Not right.', fact: 'The feet go 1.20 m out.', said: 'You wrote 1.6 m and were fairly sure.', score: null },
  tellTales: [
    {
      label: 'You used one out to three up',
      tell: 'The rule is one out to four up. At one to three the ladder is too shallow, and its feet can slide away under you.',
      danger: true,
    },
  ],
  retry: false,
  options: null,
  statements: null,
  steps: null,
  pairs: null,
  spare: [],
  drawing: null,
  explanation: null,
  working: {
    words: 'One out for every four up: divide the height by four to get the distance.',
    mathml: ladderMath,
    steps: [
      'Divide the height by four.',
      'Put the height in: 4.8 m / 4.',
      'Distance = 1.20 m. Check the angle to the ground: about 75° is right.',
    ],
    accept: 'Anything from 1.15 m to 1.25 m counts as right.',
    calculator: { href: '/calculators/ladder-base?height=4.8&region=uk', title: 'Distance of a ladder’s feet from the wall' },
  },
  caution: height,
  queryHref: '/queries/new?question=12&revision=1',
  next: { href: '/study/next', label: 'Next question', note: 'This one comes back tomorrow with fresh numbers.' },
  titleBlock: familyBlock,
};

const outcomeOfChoice: OutcomePage['data'] = {
  ...outcome,
  topicTitle: choice.topicTitle,
  position: 4,
  stem: choice.stem,
  verdict: {
    sign: 'yes',
    word: 'Right.',
    fact: 'Probably nothing.',
    said: 'You chose C and were sure. It comes back on 6 December.',
    score: null,
  },
  tellTales: [],
  options: [
    {
      letter: 'A',
      text: 'Trip at once, since more than 30 mA is flowing',
      key: false,
      yours: false,
      why: 'It compares what goes out with what comes back; here both are alike.',
    },
    {
      letter: 'B',
      text: 'Hold the current to 30 mA until he lets go',
      key: false,
      yours: false,
      why: 'An RCD switches; it does not limit the current.',
    },
    {
      letter: 'C',
      text: 'Probably nothing: what goes out also comes back',
      key: true,
      yours: true,
      why: 'Live to neutral through a person looks like any other load.',
    },
    {
      letter: 'D',
      text: 'Trip, but only after the plug fuse has blown',
      key: false,
      yours: false,
      why: 'The current is far too small for a 13 A fuse.',
    },
  ],
  explanation:
    'An RCD trips when some of the current takes another way back, for example through a person to earth. A person between live and neutral is not another way back.',
  working: null,
  caution: electric,
  queryHref: '/queries/new?question=12&revision=1',
  next: { href: '/study/next', label: 'Next question', note: 'Ten more in this round.' },
  titleBlock: questionBlock,
};

const now: NowPage['data'] = {
  today: 'Tuesday 24 November 2026',
  packTitle: 'Safety core 0.1.0',
  headline: 'Fourteen questions are ready',
  plan: 'Your plan',
  lead: 'Nine you have met and would soon forget; five are new.',
  answers: null,
  paper: null,
  evening: null,
  busy: false,
  carryOn: null,
  lengths: [
    { minutes: '10', label: '10 minutes', questions: 'about 14 questions' },
    { minutes: '5', label: '5 minutes', questions: 'about 7 questions' },
    { minutes: '20', label: '20 minutes', questions: 'about 28 questions' },
    { minutes: '0', label: 'Just one question', questions: '' },
  ],
  action: '/study/rounds',
  round: '0b2f4c1e-6c55-4f0e-9d53-2f5b0a3f6a11',
  csrf,
  first: [
    { code: 'FU-08', title: 'What an RCD cannot do', why: 'You were sure on Friday, and it was not so' },
    { code: 'FU-03', title: 'Choosing the rating', why: 'One size too large on Sunday' },
    { code: 'LA-05', title: 'Reach and grip', why: 'New' },
  ],
  coming: [
    { iso: '2026-11-25', day: 'Wed 25 Nov', text: '3 questions' },
    { iso: '2026-11-26', day: 'Thu 26 Nov', text: '12 questions, about 9 minutes' },
    { iso: '2026-12-08', day: 'Tue 8 Dec', text: 'Exam of Thursday beginners' },
  ],
  titleBlock: personBlock,
};

const regions = (chosen: string): WelcomePage['data']['regions'] =>
  [
    { value: 'uk', label: 'United Kingdom and Ireland: 230 V, square-pin plugs with a fuse' },
    { value: 'eu', label: 'Mainland Europe: 230 V, round-pin plugs' },
    { value: 'na', label: 'North America: 120 V and 240 V, flat-pin plugs' },
  ].map((region) => ({ ...region, chosen: region.value === chosen }));

const welcome: WelcomePage['data'] = {
  csrf,
  startToken: token,
  name: { value: '', why: null },
  region: 'uk',
  regions: regions('uk'),
  questions: 64,
  objectives: 80,
  topics: 13,
  packs: 'Safety core 0.1.0',
  titleBlock: serverBlock,
};

const phrase: PhrasePage['data'] = {
  name: 'Zelda Marrow',
  words: ['copper', 'window', 'gentle', 'marble', 'sunday', 'planet', 'kettle'],
  first: true,
  returnHref: 'http://192.0.2.10:3000/return',
  titleBlock: [field('For', 'Zelda Marrow', 8, { name: true }), field('Made on', '24 Nov 2026', 4)],
};

const me: MePage['data'] = {
  csrf,
  name: { value: 'Zelda Marrow', why: null },
  timeZone: { value: 'Europe/London', why: null },
  regions: regions('uk'),
  candidate: true,
  inClasses: false,
  slip: { by: 'L. Sedgewick', on: 'Tuesday 24 November 2026' },
  saved: false,
  sessions: [
    { here: true, word: 'a'.repeat(24), shared: false, since: '24 Nov 2026', seen: 'just now' },
    { here: false, word: 'b'.repeat(24), shared: true, since: '2 Nov 2026', seen: '19 Nov 2026, 21:05' },
  ],
  onShared: false,
  roleWord: 'Candidate',
  titleBlock: personBlock,
};

const staff: StaffPage['data'] = {
  csrf,
  people: [
    { name: 'H. Vane', href: '/staff/3', role: 'Administrator', state: 'Here today', codes: true },
    { name: 'L. Sedgewick', href: '/staff/4', role: 'Tutor', state: 'Invited, link open until 1 Dec 2026', codes: false },
  ],
  name: { value: '', why: null },
  roles: [
    { value: 'tutor', label: 'Tutor', chosen: true },
    { value: 'administrator', label: 'Administrator', chosen: false },
  ],
  invitation: null,
  codes: { forAll: false, with: 1, of: 2 },
  titleBlock: [field('Server of', 'Nether Wobbling Radio Club', 8, { name: true }), field('As of', '24 Nov 2026, 18:40', 4)],
};

const roundEnd: RoundEndPage['data'] = {
  headline: 'The round is done',
  lead: 'What was not right comes back soon.',
  asked: 3,
  right: 2,
  rows: [
    { objective: 'FU-08', title: 'What an RCD cannot do', how: 'Right, and sure', back: 'Sun 6 Dec', href: '/study/rounds/7/1' },
    { objective: 'LA-02', title: 'The right angle', how: 'Not right, fairly sure', back: 'tomorrow', href: '/study/rounds/7/2' },
    {
      objective: 'BA-04',
      title: 'Which lead comes off first when a battery’s negative terminal is joined to the chassis',
      how: 'Right, by a guess',
      back: 'tomorrow',
      href: '/study/rounds/7/3',
    },
  ],
  actions: { newRound: '7d0c9c63-5a51-4c0e-8b0f-0d4f0f3a3c12', csrf, more: true },
  titleBlock: personBlock,
};

const error: ErrorPage['data'] = {
  status: 404,
  heading: 'There is no such page',
  message: 'The address may be mistyped, or what it showed is no longer here. Go back to the start and try from there.',
  reference: null,
  backHref: '/',
  backLabel: 'Go to the start',
};

const signIn: SignInPage['data'] = { csrf, name: { value: '', why: null }, why: null, sharedTicked: false };

const setPassword: SetPasswordPage['data'] = {
  csrf,
  action: '/set-up/9f8e7d6c5b4a',
  heading: 'Make the first administrator',
  lead: 'This link was printed where the server was started. It works once.',
  name: { value: '', why: null },
  nameFixed: false,
  passwordWhy: null,
};

const asked = chrome('Question 4 of 14');
const askedNumber = chrome('Question 6 of 14', { scripts: ['numeric-field'] });
const two = { layout: 'two' } as const;
const staffChrome = (title: string, more: Partial<Chrome> = {}): Chrome =>
  chrome(title, {
    nav: [
      { href: '/', label: 'Classes', current: true },
      { href: '/staff', label: 'Staff', current: false },
    ],
    you: { name: 'H. Vane', href: '/me' },
    ...more,
  });

/** Every kind in parts: as asked, as it comes back incomplete, and after a wrong answer. */
const kindSamples: Sample[] = (['several', 'order', 'pairs', 'place'] as const).flatMap((kind): Sample[] => {
  const question = sampleOf(kind);
  const task = showFixed(question, 1, kind === 'place' ? twoShapes : null);
  const given = { several: 'tttt', order: '3,1,0,2', pairs: '0,2,0', place: '0' }[kind];
  const scripts = kind === 'order' ? ['order-field'] : [];
  const page = (why: string | null): Sample['page'] => ({
    view: 'study/question',
    data: { ...choice, ...askedPart(question.stem, task, null, emptyEntry, null), optionsWhy: why },
  });
  const verdict = {
    ...outcomeOfChoice.verdict,
    fact: keyWords(task),
    said: `You ${givenWords(task, given)}.`,
    score: scoreWords(task, 0.5),
  };
  const answered = { ...outcomeOfChoice, stem: question.stem, ...answeredPart(task, null, given), verdict };
  return [
    { name: `question-${kind}`, page: page(null), chrome: { ...asked, scripts } },
    { name: `question-${kind}-fault`, page: page('Something is still open: A.'), chrome: { ...asked, scripts } },
    { name: `outcome-${kind}`, page: { view: 'study/outcome', data: answered }, chrome: chrome('Partly right', two) },
  ];
});

const studySamples: Sample[] = [
  ...kindSamples,
  { name: 'question-options', page: { view: 'study/question', data: choice }, chrome: asked },
  {
    name: 'question-options-fault',
    page: {
      view: 'study/question',
      data: {
        ...choice,
        options: choice.options?.map((o) => ({ ...o, chosen: o.letter === 'C' })) ?? null,
        optionsWhy: 'Say how sure you are: press one of the three.',
      },
    },
    chrome: asked,
  },
  { name: 'question-number', page: { view: 'study/question', data: typed }, chrome: askedNumber },
  {
    name: 'question-number-fault',
    page: {
      view: 'study/question',
      data: { ...typed, entry: { ...entry, value: '1.2 or 1.6', why: '“1.2 or 1.6” holds two numbers. Give one.' } },
    },
    chrome: askedNumber,
  },
  {
    name: 'question-number-retry',
    page: {
      view: 'study/question',
      data: { ...typed, retryLead: 'The same question with fresh numbers: the ladder now reaches 6 m.', caution: null },
    },
    chrome: askedNumber,
  },
  {
    name: 'question-long',
    page: {
      view: 'study/question',
      data: {
        ...choice,
        stem: longText + 'What should be done first?',
        options: (choice.options ?? []).map((o) => ({ ...o, text: `${o.text}. ${longText}` })),
      },
    },
    chrome: asked,
  },
  { name: 'outcome-number-no', page: { view: 'study/outcome', data: outcome }, chrome: chrome('Not right: question 6 of 14', two) },
  {
    name: 'outcome-number-retry',
    page: {
      view: 'study/outcome',
      data: {
        ...outcome,
        retry: true,
        verdict: { sign: 'no', word: 'Not yet.', fact: '1.6 m is not the distance.', said: 'You were fairly sure.', score: null },
        working: null,
        next: { href: '/study/next', label: 'Try with fresh numbers', note: 'The working follows after that.' },
      },
    },
    chrome: chrome('Not yet: question 6 of 14', two),
  },
  { name: 'outcome-options-yes', page: { view: 'study/outcome', data: outcomeOfChoice }, chrome: chrome('Right: question 4 of 14', two) },
  {
    name: 'outcome-options-guess',
    page: {
      view: 'study/outcome',
      data: {
        ...outcomeOfChoice,
        verdict: {
          sign: 'guess',
          word: 'Right, by a guess.',
          fact: 'Probably nothing.',
          said: 'You chose C and were guessing. It comes back tomorrow, so that you can know it.',
          score: null,
        },
        caution: null,
      },
    },
    chrome: chrome('Right, by a guess: question 4 of 14', two),
  },
  {
    name: 'outcome-options-no',
    page: {
      view: 'study/outcome',
      data: {
        ...outcomeOfChoice,
        verdict: {
          sign: 'no',
          word: 'Not right.',
          fact: 'It will probably do nothing.',
          said: 'You chose A and were sure. A sure mistake is one people act on, so this comes back today.',
          score: null,
        },
        options: outcomeOfChoice.options?.map((o) => ({ ...o, yours: o.letter === 'A' })) ?? null,
      },
    },
    chrome: chrome('Not right: question 4 of 14', two),
  },
  { name: 'round-end', page: { view: 'study/round-end', data: roundEnd }, chrome: chrome('The round is done') },
  {
    name: 'round-end-no-more',
    page: { view: 'study/round-end', data: { ...roundEnd, right: 3, actions: { ...roundEnd.actions, more: false } } },
    chrome: chrome('The round is done'),
  },
];

const homeSamples: Sample[] = [
  { name: 'now', page: { view: 'home/now', data: now }, chrome: chrome('Now', two) },
  {
    name: 'now-paper',
    page: {
      view: 'home/now',
      data: {
        ...now,
        busy: true,
        paper: { text: 'Carry on with Winter paper: 12 minutes left', href: '/papers/sittings/x', running: true },
      },
    },
    chrome: chrome('Now', two),
  },
  {
    name: 'now-evening',
    page: {
      view: 'home/now',
      data: { ...now, busy: true, evening: { text: 'Come in: Ladders is running in H. <Vane>', href: '/evening/x', first: true } },
    },
    chrome: chrome('Now', two),
  },
  {
    name: 'now-carry-on',
    page: {
      view: 'home/now',
      data: { ...now, headline: 'Your round is open', carryOn: { href: '/study/next', label: 'Carry on with question 5 of 14' } },
    },
    chrome: chrome('Now', two),
  },
  {
    name: 'now-nothing-ready',
    page: {
      view: 'home/now',
      data: {
        ...now,
        headline: 'You have answered everything for today',
        lead: 'Come back tomorrow: what you might forget will be waiting.',
        lengths: [],
        first: [],
        coming: [],
      },
    },
    chrome: chrome('Now', { ...two, plainHttp: true }),
  },
  {
    name: 'welcome',
    page: { view: 'home/welcome', data: welcome },
    chrome: chrome('Start', { ...two, ...visitor, scripts: ['numeric-field'] }),
  },
  {
    name: 'welcome-fault',
    page: {
      view: 'home/welcome',
      data: { ...welcome, name: { value: '', why: 'Type a name, so that we can greet you. Any name will do.' } },
    },
    chrome: chrome('Start', { ...two, ...visitor, plainHttp: true }),
  },
  {
    name: 'about',
    page: {
      view: 'home/about',
      data: { packs: [{ title: 'Safety core', version: '0.1.0', licence: 'CC BY-SA 4.0', questions: 64, families: 10 }] },
    },
    chrome: chrome('About', { nav: nav('About') }),
  },
];

const accountSamples: Sample[] = [
  {
    name: 'phrase',
    page: { view: 'accounts/phrase', data: phrase },
    chrome: chrome('Your return phrase', visitor),
  },
  { name: 'phrase-again', page: { view: 'accounts/phrase', data: { ...phrase, first: false } }, chrome: chrome('Your return phrase') },
  {
    name: 'return',
    page: { view: 'accounts/return', data: { csrf, phrase: { value: '', why: null }, words: 7, sharedTicked: false } },
    chrome: chrome('Come back', visitor),
  },
  {
    name: 'return-fault',
    page: {
      view: 'accounts/return',
      data: {
        csrf,
        phrase: { value: 'copper window gentle marble sunday', why: 'These are 5 words. The phrase has 7.' },
        words: 7,
        sharedTicked: true,
      },
    },
    chrome: chrome('Come back', visitor),
  },
  { name: 'sign-in', page: { view: 'accounts/sign-in', data: signIn }, chrome: chrome('Sign in', visitor) },
  {
    name: 'sign-in-fault',
    page: {
      view: 'accounts/sign-in',
      data: {
        csrf,
        name: { value: 'H. Vane', why: null },
        why: 'Name and password do not belong together. Try again.',
        sharedTicked: true,
      },
    },
    chrome: chrome('Sign in', { ...visitor, plainHttp: true }),
  },
  { name: 'set-password', page: { view: 'accounts/set-password', data: setPassword }, chrome: chrome('Set a password', visitor) },
  {
    name: 'set-password-fault',
    page: {
      view: 'accounts/set-password',
      data: {
        ...setPassword,
        heading: 'Welcome, tutor',
        name: { value: 'L. Sedgewick', why: null },
        nameFixed: true,
        passwordWhy: 'The password has 7 characters. It needs 12 or more.',
      },
    },
    chrome: chrome('Set a password', visitor),
  },
  { name: 'me', page: { view: 'accounts/me', data: me }, chrome: chrome('Your page', two) },
  {
    name: 'me-in-a-class',
    page: { view: 'accounts/me', data: { ...me, inClasses: true, slip: null } },
    chrome: chrome('Your page', two),
  },
  {
    name: 'me-saved',
    page: { view: 'accounts/me', data: { ...me, saved: true, candidate: false, roleWord: 'Tutor' } },
    chrome: staffChrome('Your page', two),
  },
  {
    name: 'me-fault',
    page: {
      view: 'accounts/me',
      data: { ...me, timeZone: { value: 'Nether Wobbling', why: 'There is no time zone of this name. Try Europe/London.' } },
    },
    chrome: chrome('Your page', two),
  },
  { name: 'staff', page: { view: 'accounts/staff', data: staff }, chrome: staffChrome('Staff', two) },
  {
    name: 'staff-invited',
    page: {
      view: 'accounts/staff',
      data: {
        ...staff,
        name: { value: 'H. Vane', why: 'Somebody has this name already. Choose another.' },
        invitation: {
          name: 'L. Sedgewick',
          href: 'http://192.0.2.10:3000/invitation/5f2c9a7e1b3d4f6081a2c3d4e5f60718',
          until: '1 Dec 2026, 18:40',
        },
      },
    },
    chrome: staffChrome('Staff', two),
  },
  { name: 'error', page: { view: 'errors/error', data: error }, chrome: chrome('There is no such page', visitor) },
  {
    name: 'error-reference',
    page: {
      view: 'errors/error',
      data: {
        ...error,
        status: 500,
        heading: 'Something went wrong here',
        message: 'It is not your fault. Try again; if it comes back, give the reference number to the person who runs this server.',
        reference: 'req-7f3k2',
      },
    },
    chrome: chrome('Something went wrong here', visitor),
  },
];

/** All samples of all pages. */
export const samples: readonly Sample[] = [
  ...studySamples,
  ...homeSamples,
  ...accountSamples,
  ...accountPages.map(({ name, page, staff, layout }) => ({
    name,
    page,
    chrome: staff ? staffChrome('Staff', { layout, styles: ['class.css'] }) : chrome('Sign in', visitor),
  })),
  ...calculatorPages.map(({ name, page }) => ({
    name,
    page,
    chrome: chrome('Calculators', { ...visitor, layout: page.view === 'calculators/list' ? 'one' : 'two' }),
  })),
  ...bankPages.map(({ name, page }) => ({
    name,
    page,
    chrome: staffChrome('Bank', { layout: page.view === 'bank/question' ? 'two' : 'one' }),
  })),
  ...outlookPages.map(({ name, page }) => ({ name, page, chrome: chrome('Outlook', { layout: 'two' }) })),
  ...progressPages.map(({ name, page }) => ({
    name,
    page,
    chrome: chrome('Progress', { layout: page.view === 'progress/progress' ? 'two' : 'one' }),
  })),
  ...eveningPages.map(({ name, page }) => ({
    name,
    page,
    chrome: /answer|open/.test(page.view)
      ? chrome('Class evening', { layout: page.view === 'evenings/answer' ? 'two' : 'one', styles: ['class.css'] })
      : staffChrome('Class evening', { layout: 'wide', styles: ['class.css'] }),
  })),
  ...paperPages.map(({ name, page }) => ({
    name,
    page,
    chrome: chrome('Papers', { layout: /cover|hand-in/.test(page.view) ? 'one' : 'two' }),
  })),
  ...entryPages.map(({ name, page }) => ({ name, page, chrome: staffChrome('Enter results', { scripts: ['letters-field'] }) })),
  ...classPaperPages.map(({ name, page }) => ({
    name,
    page,
    chrome: staffChrome('Papers', { layout: page.view === 'papers/class-paper' ? 'one' : 'two' }),
  })),
  ...reportPages.map(({ name, page, staff }) => ({
    name,
    page,
    chrome: staff ? staffChrome('Report', { layout: 'wide', styles: ['class.css'] }) : chrome('Your report'),
  })),
  ...personalDataPages.map(({ name, page, staff }) => ({ name, page, chrome: staff ? staffChrome('Data') : chrome('Data') })),
  ...teachingPages.map(({ name, page, title, layout }) => ({ name, page, chrome: staffChrome(title, { layout, styles: ['class.css'] }) })),
  ...upkeepPages.map(({ name, page, title, layout }) => ({ name, page, chrome: staffChrome(title, { layout, styles: ['class.css'] }) })),
  ...skillPages.map(({ name, page, title, layout }) => ({ name, page, chrome: staffChrome(title, { layout, styles: ['class.css'] }) })),
  ...tablePages.map(({ name, page }) => ({
    name,
    page,
    chrome: staffChrome('Which question is bad', page.view === 'analysis/table' ? {} : { layout: 'wide', styles: ['class.css'] }),
  })),
  ...planPages.map(({ name, page }) => ({ name, page, chrome: chrome('Plan', { layout: 'two' }) })),
  ...peoplePages.map(({ name, page }) => ({
    name,
    page,
    chrome: staffChrome('People', { layout: page.view.startsWith('classes/people') ? 'two' : 'one', styles: ['class.css'] }),
  })),
  ...printPages.map(({ name, page }) => ({
    name,
    page,
    chrome: staffChrome('Print a paper', { scripts: ['print-page'], styles: ['print-paper.css'] }),
  })),
  ...questionAnalysisPages.map(({ name, page }) => ({
    name,
    page,
    chrome: staffChrome('Which question is bad', {
      layout: page.view === 'analysis/class-questions' ? 'one' : 'two',
      styles: ['class.css'],
    }),
  })),
  ...packPages.map(({ name, page }) => ({
    name,
    page,
    chrome: staffChrome('Packs', { layout: page.view === 'packs/list' ? 'two' : 'one' }),
  })),
];
