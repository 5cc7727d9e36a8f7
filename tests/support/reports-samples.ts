import { classTabs } from '../../src/classes/index.js';
import type { ClassReportPage, OwnReportPage } from '../../src/reports/page-types.js';
import { field } from '../../src/study/index.js';

/** The reports as page data. People and figures are invented. */

const titleBlock = [field('Tutor', 'H. <Vane>', 12, { name: true })];

const report: ClassReportPage['data'] = {
  tabs: classTabs(1, '/report'),
  name: 'Thursday <beginners>',
  lead: '12 candidates; exam on Tuesday 8 December 2026.',
  csvHref: '/classes/1/results.csv',
  papers: ['Autumn <paper>'],
  rows: [
    {
      name: 'Ivo <Crackthorn>',
      outlook: '14 % to 52 %',
      answers: '41 answers',
      firsts: '12 of 30',
      seen: '9 days ago',
      marks: ['17 of 26, not passed'],
      skills: '1 of 12',
      sure: '2',
    },
    {
      name: 'Bartholomew Featherstonehaugh-Wobblington',
      outlook: 'too little known',
      answers: '0 answers',
      firsts: '–',
      seen: 'never yet',
      marks: ['–'],
      skills: '–',
      sure: '0',
    },
  ],
  teach: [{ title: 'EA-03 RF earth is <not> a safety earth', text: '7 of 12 chose “It earths the mains as well”.' }],
  mistakes: [{ code: 'EA-03-002', stem: 'Is an RF earth <enough>?', names: 'Ivo Crackthorn' }],
  titleBlock,
};

const own: OwnReportPage['data'] = {
  name: 'Zelda <Marrow>',
  outlook: 'If a paper of 26 questions with 19 to pass were sat tomorrow: about 7 to 9 of 10 people who answer like this would pass.',
  topics: [{ title: 'Earths & bonds', rungs: '3 firm, 2 loose, 0 not yet' }],
  papers: [{ title: 'Autumn <paper>', day: 'Tue 24 Nov', mark: '21 of 26, passed' }],
  skills: [{ title: 'Check a lead', seen: '12 Nov 2026, by H. <Vane>' }],
  sureness: [{ words: 'Sure', share: '80 of 88 right' }],
  time: '210 answers on 12 days, about 140 minutes in all.',
  titleBlock,
};

export const reportPages = [
  { name: 'class-report', page: { view: 'reports/class', data: report } satisfies ClassReportPage, staff: true },
  {
    name: 'class-report-empty',
    page: { view: 'reports/class', data: { ...report, papers: [], rows: [], teach: [], mistakes: [] } } satisfies ClassReportPage,
    staff: true,
  },
  { name: 'own-report', page: { view: 'reports/own', data: own } satisfies OwnReportPage, staff: false },
  {
    name: 'own-report-empty',
    page: { view: 'reports/own', data: { ...own, papers: [], skills: [], topics: [], sureness: [] } } satisfies OwnReportPage,
    staff: false,
  },
];
