import { dayBars } from '../../src/core/charts/day-bars.js';
import type { PlanPage } from '../../src/plan/page-types.js';

/** The page of the plan as page data. */

const plan: PlanPage['data'] = {
  csrf: 'csrf-token',
  headline: '3 days to the exam',
  lead: 'In the last fortnight each day asks what helps most on the day of the exam.',
  saved: true,
  exam: { value: '2026-12-08', why: null },
  minutes: { value: '10', why: null },
  daysOff: { value: '2026-12-06\n2026-12-07', why: null },
  weekdays: ['Monday', 'Tuesday'].map((name, index) => ({ value: String(index + 1), name, off: index === 0 })),
  papers: [
    { value: 'small/ten', text: 'Ten questions, 7 to pass (Small pack)', chosen: true },
    { value: 'small/five', text: 'Five <hot> questions, 4 to pass (Small pack)', chosen: false },
  ],
  chart: dayBars(
    [
      { label: '5 Dec', again: 7, fresh: 3 },
      { label: null, again: 0, fresh: 0 },
    ],
    'Questions on each day',
  ),
  days: [
    { iso: '2026-12-05', day: 'Sat 5 Dec', fresh: '3', again: '7', minutes: '9' },
    { iso: '2026-12-06', day: 'Sun 6 Dec', fresh: 'day off', again: 'day off', minutes: '' },
  ],
  calendarHref: '/plan/calendar/1-1-abcdefghijklmnopqrstuv.ics',
  titleBlock: [{ label: 'Candidate', value: 'Zelda Marrow', width: 12, name: true, id: false, href: null }],
};

export const planPages: readonly { name: string; page: PlanPage }[] = [
  { name: 'plan', page: { view: 'plan/plan', data: plan } },
  { name: 'plan-first', page: { view: 'plan/plan', data: { ...plan, saved: false, calendarHref: null, papers: [] } } },
  {
    name: 'plan-fault',
    page: {
      view: 'plan/plan',
      data: {
        ...plan,
        saved: false,
        exam: { value: '31 Feb', why: 'This is no date.' },
        minutes: { value: 'x', why: 'Write the minutes.' },
      },
    },
  },
];
