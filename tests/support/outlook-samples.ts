import { rangeOnScale, rangesOverDays } from '../../src/core/charts/range.js';
import type { OutlookPage } from '../../src/outlook/page-types.js';

/** The page of the outlook as page data. */

const outlook: OutlookPage['data'] = {
  headline: 'Will I pass?',
  lead: 'A paper of 26 questions with 19 to pass, on Tue 8 Dec, if you keep to your plan: of people who answer like you, about 7 to 9 of 10 would pass.',
  tooFew: false,
  scale: rangeOnScale(0.68, 0.91, 'From 68 % to 91 %'),
  range: 'Between 68 % and 91 %.',
  tomorrow: 'If you sat it tomorrow: about 3 to 5 of 10.',
  topics: [{ topic: 'Ladders <high>', asked: '2', right: '1.3 to 1.6' }],
  unmet: 'You have met 60 of 488 questions so far.',
  gains: [
    {
      objective: 'FU-08',
      title: 'What an RCD cannot do',
      minutes: 'about 4 min',
      practise: {
        csrf: 'token',
        round: '6f1c2d3e-0000-4000-8000-000000000001',
        objective: 'entry-safety/FU-08',
        label: 'Go over FU-08 now',
      },
    },
  ],
  chart: rangesOverDays(
    [
      { day: 1, low: 0.3, high: 0.6 },
      { day: 5, low: 0.5, high: 0.8 },
    ],
    ['Fri 20 Nov', 'Tue 24 Nov'],
    'The outlook on each day, in per cent',
  ),
  history: [{ iso: '2026-11-20', day: 'Fri 20 Nov', low: '30 %', high: '60 %' }],
  titleBlock: [{ label: 'Candidate', value: 'Zelda Marrow', width: 12, name: true, id: false, href: null }],
};

const none = { tooFew: true, scale: null, range: null, tomorrow: null, unmet: null, topics: [], gains: [], chart: null, history: [] };

export const outlookPages: readonly { name: string; page: OutlookPage }[] = [
  { name: 'outlook', page: { view: 'outlook/outlook', data: outlook } },
  { name: 'outlook-too-few', page: { view: 'outlook/outlook', data: { ...outlook, ...none, headline: 'Too few answers yet' } } },
];
