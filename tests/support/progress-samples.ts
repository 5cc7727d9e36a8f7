import { dayBars } from '../../src/core/charts/day-bars.js';
import { sharesOnScale } from '../../src/core/charts/shares.js';
import type { AnswersPage, ProgressPage } from '../../src/progress/page-types.js';

/** The pages of progress as page data. */

const titleBlock = [{ label: 'Candidate', value: 'Zelda Marrow', width: 12 as const, name: true, id: false, href: null }];

const progress: ProgressPage['data'] = {
  headline: '1 of 3 rungs firm',
  lead: 'Each topic is a ladder and each rung an objective.',
  key: [
    { look: 'firm', text: 'firm: at least half of its questions met' },
    { look: 'loose', text: 'loose: partly met' },
    { look: 'none', text: 'not yet: none met' },
  ],
  ladders: [
    {
      id: 'ladder-1',
      title: 'Shock <and fire>',
      count: '1 of 3 firm',
      open: true,
      rungs: [
        { id: 'SH-03', title: 'Rescue', look: 'none', state: 'not yet', met: '0 of 6 met', next: false },
        { id: 'SH-02', title: 'Capacitors', look: 'loose', state: 'loose', met: '3 of 6 met; sure of a wrong answer here', next: true },
        { id: 'SH-01', title: 'Current through the body', look: 'firm', state: 'firm', met: '6 of 6 met', next: false },
      ],
    },
    { id: 'ladder-2', title: 'Earths', count: '0 of 0 firm', open: false, rungs: [] },
  ],
  fading: [{ objective: 'SH-02', title: 'Capacitors', when: 'tomorrow', questions: '2 questions' }],
  fadingMore: 'And 3 more within a week.',
  sureness: 'When you say sure, you can rely on it.',
  sureChart: sharesOnScale(
    [
      { label: 'Sure', share: { value: 0.9, low: 0.7, high: 0.97 } },
      { label: 'Guessing', share: null },
    ],
    'Share right by how sure you were, in per cent',
  ),
  sureRows: [{ words: 'Sure', answers: '20', right: '18', share: '90 % (70 % to 97 %)' }],
  time: 'About 40 minutes on 3 days in all.',
  timeChart: dayBars([{ label: '23 Nov', again: 12, fresh: 0 }], 'Minutes of study on each of the last 28 days'),
  timeRows: [{ week: 'Mon 16 Nov to Sun 22 Nov', minutes: '40', answers: '55' }],
  titleBlock,
};

const answers: AnswersPage['data'] = {
  text: 'earth "wire"',
  shows: [
    { value: 'all', text: 'All answers', chosen: true },
    { value: 'wrong', text: 'Only wrong ones', chosen: false },
  ],
  found: '120 answers.',
  days: [
    {
      iso: '2026-11-24',
      title: 'Tuesday 24 November 2026',
      answers: [
        {
          href: '/study/answers/0b9f1c1e-6f0a-4a53-9d6f-0d6f2a3f1b77',
          code: 'FQ-EA-01-001',
          stem: 'What carries a fault?',
          verdict: 'right',
          sure: 'sure',
        },
        {
          href: '/study/answers/1b9f1c1e-6f0a-4a53-9d6f-0d6f2a3f1b77',
          code: 'nf-plug',
          stem: 'A 3 kW heater',
          verdict: 'not known',
          sure: '',
        },
      ],
    },
  ],
  before: '/progress/answers?page=1',
  after: '/progress/answers?page=3',
  pageWords: '51 to 100 of 120',
  titleBlock,
};

export const progressPages: readonly { name: string; page: ProgressPage | AnswersPage }[] = [
  { name: 'progress', page: { view: 'progress/progress', data: progress } },
  {
    name: 'progress-new',
    page: {
      view: 'progress/progress',
      data: { ...progress, fading: [], fadingMore: null, sureChart: null, sureRows: [], timeChart: null, timeRows: [] },
    },
  },
  { name: 'answers', page: { view: 'progress/answers', data: answers } },
  {
    name: 'answers-none',
    page: { view: 'progress/answers', data: { ...answers, days: [], after: null, pageWords: null, found: 'Nothing on this page.' } },
  },
];
