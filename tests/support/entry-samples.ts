import type { CsvPage, EnterPage } from '../../src/papers/entry-page-types.js';

/** The pages for entering results as page data: a fresh form, one that comes back, a sheet to be corrected, a table and its report. */

const here = '/class-papers/0b9f1c1e-6f0a-4a53-9d6f-0d6f2a3f1b77';
const csrf = 'csrf-token';
const sitting = '7d0c9c63-5a51-4c0e-8b0f-0d4f0f3a3c12';
const title = 'Radio safety: mock paper 7';
const titleBlock: EnterPage['data']['titleBlock'] = [
  { label: 'Paper', value: title, width: 6, name: true, id: false, href: null },
  { label: 'Class', value: 'Thursday beginners', width: 6, name: false, id: false, href: null },
];

const enter: EnterPage['data'] = {
  csrf,
  title,
  paperHref: here,
  headline: 'Enter results',
  said: { look: 'yes', word: 'Perpetua Moss, version 3: 19 of 26 saved.', note: 'Passed.' },
  fault: null,
  sure: '3',
  action: `${here}/enter`,
  correcting: null,
  candidates: [
    { value: '', text: 'Choose', chosen: true },
    { value: '7', text: 'Bartholomew Featherstonehaugh-Wobblington', chosen: false },
    { value: '9', text: 'Ivo <b>Crackthorn</b>', chosen: false },
    { value: 'guest', text: 'Somebody without an account', chosen: false },
  ],
  candidateWhy: null,
  name: { value: '', why: null },
  version: { value: '4', why: null },
  versionHint: '1 to 12; it stands on the sheet.',
  letters: { value: '', why: null },
  lettersHint: '26 in all, from question 1 on. Type - for a blank; spaces do not matter.',
  counts: Array.from({ length: 12 }, () => '44445444434444444444444464').join(' '),
  remove: null,
  csvHref: `${here}/csv`,
  resultsHref: `${here}/results.csv`,
  left: '2 members without a result yet.',
  rows: [
    {
      name: 'Perpetua Moss',
      note: '',
      version: 3,
      mark: '19 of 26',
      passed: 'passed',
      when: 'Thu 26 Nov, 20:31',
      correctHref: `${here}/enter?correct=${sitting}`,
      removeHref: null,
    },
    {
      name: 'Sunniva from the other club',
      note: 'no account',
      version: 2,
      mark: '8 of 26',
      passed: 'not passed',
      when: 'Thu 26 Nov, 20:30',
      correctHref: `${here}/enter?correct=${sitting}`,
      removeHref: `${here}/enter?correct=${sitting}#remove`,
    },
  ],
  titleBlock,
};

const csv: CsvPage['data'] = {
  csrf,
  title,
  paperHref: here,
  enterHref: `${here}/enter`,
  resultsHref: `${here}/results.csv`,
  action: `${here}/csv`,
  questions: 26,
  why: null,
  text: '',
  report: null,
  titleBlock,
};

const lead = '2 rows have something wrong. 3 rows of 5 can be imported.';

export const entryPages: readonly { name: string; page: EnterPage | CsvPage }[] = [
  { name: 'enter', page: { view: 'papers/enter', data: enter } },
  {
    name: 'enter-first',
    page: {
      view: 'papers/enter',
      data: { ...enter, said: null, left: 'Every member has a result.', rows: [], version: { value: '1', why: null } },
    },
  },
  {
    name: 'enter-fault',
    page: {
      view: 'papers/enter',
      data: {
        ...enter,
        said: null,
        fault: { word: 'Not saved yet.', why: 'Choose whose sheet it is.', target: 'candidate' },
        candidateWhy: 'Choose whose sheet it is.',
        version: { value: '13', why: 'There is no version “13”: the paper has versions 1 to 12.' },
        letters: { value: 'abcda-bc', why: '8 answers for 26 questions: 18 missing. Type - for a blank.' },
      },
    },
  },
  {
    name: 'enter-correct',
    page: {
      view: 'papers/enter',
      data: {
        ...enter,
        said: null,
        headline: 'Correct Sunniva from the other club’s sheet',
        correcting: { sitting, note: 'The mark is worked out anew.', backHref: `${here}/enter` },
        version: { value: '2', why: null },
        letters: { value: 'ABCDA-BCABCDABCDABCDABCDAB', why: null },
        remove: {
          action: `${here}/enter/${sitting}/remove`,
          nameAction: `${here}/enter/${sitting}/name`,
          name: 'Sunniva from the other club',
        },
      },
    },
  },
  { name: 'results-table', page: { view: 'papers/csv', data: csv } },
  {
    name: 'results-table-fault',
    page: {
      view: 'papers/csv',
      data: {
        ...csv,
        why: lead,
        text: 'candidate,version,answers\nPerpetua Moss,13,ABCD',
        report: {
          lead,
          findings: [
            { place: 'Row 2, Perpetua Moss', words: 'There is no version “13”: the paper has versions 1 to 12.' },
            { place: 'Row 3, Ivo Crackthrn', words: 'In doubt. No member has this name; Ivo Crackthorn has nearly the same.' },
            { place: 'Row 6', words: 'The name is missing. Question 7 has no E (A to D).' },
          ],
          guests: 'Ivo Crackthrn, Sunniva <from> the other club',
          absent: 'Bartholomew Featherstonehaugh-Wobblington',
          confirm: { label: 'Import the 3 clean rows', clean: '3' },
        },
      },
    },
  },
  {
    name: 'results-table-fault-none',
    page: { view: 'papers/csv', data: { ...csv, why: 'A quotation mark is opened and never closed.', text: 'candidate,"' } },
  },
];
