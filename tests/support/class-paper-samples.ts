import { reliabilityChart } from '../../src/core/charts/reliability.js';
import { field } from '../../src/study/index.js';
import type { BlueprintsPage } from '../../src/papers/blueprint-page.js';
import type { CalibrationPage } from '../../src/papers/calibration.js';
import type { ClassPaperPage, ClassPapersPage, ClassReviewPage } from '../../src/papers/set-page-types.js';

/** The pages of a tutor's papers as page data. */

const csrf = 'token';
const uuid = '6f1c2d3e-0000-4000-8000-000000000003';
const root = `/class-papers/${uuid}`;
const titleBlock = [field('Tutor', 'H. <Vane>', 12, { name: true })];
const plain = (value: string) => ({ value, why: null });

const form: NonNullable<ClassPapersPage['data']['form']> = {
  classes: [{ value: '1', text: 'Thursday beginners (12 candidates)', chosen: true }],
  papers: [{ value: 'entry-safety/twenty-six', text: 'Twenty-six questions', chosen: true }],
  paperWhy: null,
  regions: [{ value: 'uk', text: 'United Kingdom, 230 V', chosen: true }],
  title: plain('Class paper 1'),
  versions: plain('12'),
  screen: true,
  opens: plain('2026-11-26T19:30'),
  closes: plain('2026-11-26T21:30'),
  fault: null,
  timeZone: 'Europe/London',
};

const list: ClassPapersPage['data'] = {
  csrf,
  id: uuid,
  set: [
    { href: root, title: 'Winter <paper>', className: 'Thursday beginners', window: 'open until Thu 26 Nov, 21:30', handedIn: '3 of 12' },
  ],
  form,
  titleBlock,
};

const faulty: ClassPapersPage['data'] = {
  ...list,
  set: [],
  form: {
    ...form,
    paperWhy: 'This paper cannot be filled there. EA Earths lacks 1: 4 asked, 3 there.',
    title: { value: '', why: 'Give it a name, such as Winter paper.' },
    versions: { value: 'x', why: 'Write a whole number from 1 to 60.' },
    opens: { value: 'soon', why: 'This is no day and time.' },
    closes: { value: '2026-11-26T18:30', why: 'It would close before it opens.' },
    fault: { why: 'This paper cannot be filled there.', target: 'paper' },
  },
};

const paper: ClassPaperPage['data'] = {
  csrf,
  title: 'Winter <paper>',
  lead: 'Thursday beginners: open until Thu 26 Nov, 21:30. 1 of 3 handed in, 1 passed.',
  close: `${root}/close`,
  questions: [{ href: `${root}/review/3`, position: 3, objective: 'LA-02', title: 'The angle of a <ladder>', right: '1 of 3' }],
  reliability: {
    kr20: '0.69 (0.30 to 0.90)',
    kr20Words: 'Too few answers to tell whether it reaches 0.70.',
    sem: '1.6 marks',
    semWords: 'A mark is good to about 1.6 up or down.',
    near: '4 of 12 are within 1.6 marks of the pass mark, 19.',
  },
  links: [{ href: `${root}/print`, text: 'Print papers, answer sheets and the key' }],
  remarked: 'A key was corrected after this paper was made: 1 paper was marked again.',
  roll: [
    { name: 'Zelda <Marrow>', version: '1', state: 'handed in', mark: '20 (was 19), passed', extra: null, guest: null },
    {
      name: 'Odo',
      version: '',
      state: 'not begun',
      mark: '',
      extra: {
        action: `${root}/extra-time`,
        member: '7',
        choices: [{ value: '0', text: 'No extra time', chosen: true }],
        label: 'Extra time for Odo',
      },
      guest: null,
    },
    {
      name: 'Tansy',
      version: '3',
      state: 'on paper',
      mark: '12, not passed',
      extra: null,
      guest: `${root}/enter?correct=${uuid}#remove`,
    },
  ],
  titleBlock,
};

const review: ClassReviewPage['data'] = {
  title: 'Winter paper',
  place: 'Question 3 of 26',
  stem: 'How far out do the feet of the ladder go?',
  hidden: { drawing: null, options: [{ letter: 'A', text: '0.8 m' }], show: `${root}/review/3?show=yes` },
  shown: null,
  caution: { sign: 'general', text: 'Work at height kills.' },
  before: `${root}/review/2`,
  after: `${root}/review/4`,
  back: root,
  titleBlock,
};

const shown: ClassReviewPage['data']['shown'] = {
  fact: '1.2 m.',
  answered: {
    options: [{ letter: 'A', text: '0.8 m', key: false, yours: false, why: 'Divided by six.' }],
    statements: null,
    steps: null,
    pairs: null,
    spare: [],
    drawing: null,
  },
  few: null,
  counts: [{ letter: 'A', count: 4, share: 'of 12' }],
  blank: '1 blank.',
  explanation: 'Four up, one out.',
};

const blueprints: BlueprintsPage['data'] = {
  csrf,
  own: [{ id: '4', title: 'Plugs <only>', text: '12 questions, 15 min, 9 to pass (Entry safety)', by: 'H. Vane' }],
  packs: [
    { href: '/class-papers/blueprints?pack=entry-safety', title: 'Entry safety', current: true },
    { href: '/class-papers/blueprints?pack=hilltop', title: 'Hilltop', current: false },
  ],
  form: {
    pack: 'entry-safety',
    title: plain(''),
    minutes: plain('30'),
    passMark: plain(''),
    why: null,
    topics: [{ name: 'share-EA', title: 'EA Earths', value: '4', have: 'UK 24, Europe 23, North America 22' }],
  },
  titleBlock,
};

const calibration: CalibrationPage['data'] = {
  headline: 'Does the outlook foretell?',
  lead: 'Before 24 mock papers the outlook told 70 % on average, and 66 % passed.',
  chart: reliabilityChart([{ predicted: 0.7, happened: 0.6, low: 0.4, high: 0.8 }], 'Told and <happened>'),
  bins: [{ told: '70 %', papers: 12, passed: '66 %', limits: '39 % to 86 %' }],
  figures: [{ name: 'Brier score', value: '0.190', meaning: '0 is perfect.' }],
  titleBlock,
};

type Page = ClassPapersPage | ClassPaperPage | ClassReviewPage | BlueprintsPage | CalibrationPage;

export const classPaperPages: readonly { name: string; page: Page }[] = [
  { name: 'class-papers', page: { view: 'papers/class-papers', data: list } },
  { name: 'class-papers-fault', page: { view: 'papers/class-papers', data: faulty } },
  { name: 'class-papers-no-class', page: { view: 'papers/class-papers', data: { ...list, set: [], form: null } } },
  { name: 'class-paper', page: { view: 'papers/class-paper', data: paper } },
  {
    name: 'class-paper-closed',
    page: { view: 'papers/class-paper', data: { ...paper, close: null, roll: [], remarked: null, questions: [], reliability: null } },
  },
  { name: 'class-review', page: { view: 'papers/class-review', data: review } },
  { name: 'class-review-shown', page: { view: 'papers/class-review', data: { ...review, hidden: null, shown } } },
  { name: 'calibration', page: { view: 'papers/calibration', data: calibration } },
  { name: 'calibration-none', page: { view: 'papers/calibration', data: { ...calibration, chart: null, bins: [], figures: [] } } },
  { name: 'blueprints', page: { view: 'papers/blueprints', data: blueprints } },
  {
    name: 'blueprints-fault',
    page: {
      view: 'papers/blueprints',
      data: {
        ...blueprints,
        own: [],
        form: { ...(blueprints.form as NonNullable<BlueprintsPage['data']['form']>), why: 'The pack cannot fill it.' },
      },
    },
  },
];
