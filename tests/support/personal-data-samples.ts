import type {
  DataPage,
  KeepingPage,
  PeoplePage,
  PrivacyPage,
  RemovedPage,
  RemovePage,
  WholePage,
} from '../../src/personal-data/page-types.js';

/** The pages about people's data as page data. People and figures are invented. */

const csrf = 'csrf-token';
const titleBlock = [{ label: 'About', value: 'H. <Vane>', width: 12, name: true, id: false, href: null }] as const;

const kinds: DataPage['data']['kinds'] = [
  {
    id: 'account',
    title: 'Your account',
    count: '1 line',
    seen: 'The tutors of your classes.',
    kept: null,
    lines: ['H. <Vane> (candidate), number 12, mains region uk, time zone Europe/London'],
  },
  { id: 'answers', title: 'Your answers', count: '412 lines', seen: 'The tutors of your classes.', kept: 'For ever & a day.', lines: [] },
];

const data: DataPage['data'] = {
  candidate: true,
  lead: 'It is kept until you have it removed, or until 18 months after your last visit.',
  kinds,
  none: ['queries that you raised', 'your plan'],
  titleBlock: [...titleBlock],
};

const whole: WholePage['data'] = {
  name: 'H. <Vane>',
  lead: 'This is part 2 of 3.',
  kinds,
  none: ['your plan'],
  before: '/me/data/all?part=1',
  after: '/me/data/all?part=3',
  titleBlock: [...titleBlock],
};

const remove: RemovePage['data'] = {
  csrf,
  action: '/me/remove',
  back: '/me/data',
  heading: 'Remove me and everything of mine',
  lead: 'This cannot be undone.',
  download: true,
  goes: ['the account', 'all answers'],
  stays: ['backups, for three months'],
  why: null,
  tick: 'I know that it cannot be undone.',
  button: 'Remove everything now',
  titleBlock: [...titleBlock],
};

const keeping: KeepingPage['data'] = {
  csrf,
  saved: 'The new time counts from the next night on.',
  contact: { value: 'Alma <Thrupp>, on Thursdays', why: null },
  months: [
    { value: '12', text: '12 months', chosen: false },
    { value: '18', text: '18 months', chosen: true },
  ],
  lead: '1 candidate will be removed, unless they come back.',
  groups: [
    {
      className: 'Thursday <beginners>',
      people: [
        {
          name: 'Mungo <Tarn>',
          seen: '2 May 2025, 19:30',
          removeOn: '12 Dec 2026',
          keepAction: '/upkeep/keeping/9',
          keepLabel: 'Keep Mungo <Tarn> for a year more',
        },
      ],
    },
  ],
  more: 'And 12 candidates more.',
  guests: '3 names on printed sheets are taken off within the next 14 days.',
  kept: [{ name: 'Wilf <Pinder>', until: '1 Dec 2027' }],
  titleBlock: [...titleBlock],
};

const people: PeoplePage['data'] = {
  text: 'van',
  said: 'The account and everything of it is gone.',
  found: '1 person.',
  people: [{ href: '/people/9/remove', name: 'H. <Vane>', facts: 'Candidate since 2 May 2026, in Thursday beginners.' }],
  titleBlock: [...titleBlock],
};

/** For everybody; then those that only staff see. */
export const personalDataPages = [
  { name: 'data', page: { view: 'personal-data/data', data } satisfies DataPage, staff: false },
  {
    name: 'data-staff',
    page: { view: 'personal-data/data', data: { ...data, candidate: false, none: [] } } satisfies DataPage,
    staff: true,
  },
  { name: 'data-all', page: { view: 'personal-data/whole', data: whole } satisfies WholePage, staff: false },
  {
    name: 'data-all-empty',
    page: { view: 'personal-data/whole', data: { ...whole, kinds: [], before: null, after: null } } satisfies WholePage,
    staff: false,
  },
  { name: 'remove-oneself', page: { view: 'personal-data/remove', data: remove } satisfies RemovePage, staff: false },
  {
    name: 'remove-fault',
    page: {
      view: 'personal-data/remove',
      data: {
        ...remove,
        action: '/people/9/remove',
        back: '/people',
        heading: 'Remove H. <Vane>',
        download: false,
        why: 'Tick the box first: this cannot be undone.',
      },
    } satisfies RemovePage,
    staff: true,
  },
  { name: 'removed', page: { view: 'personal-data/removed', data: { titleBlock: [...titleBlock] } } satisfies RemovedPage, staff: false },
  {
    name: 'privacy',
    page: {
      view: 'personal-data/privacy',
      data: { months: 18, contact: 'Alma <Thrupp>, on Thursdays', titleBlock: [...titleBlock] },
    } satisfies PrivacyPage,
    staff: false,
  },
  { name: 'keeping', page: { view: 'personal-data/keeping', data: keeping } satisfies KeepingPage, staff: true },
  {
    name: 'keeping-nobody',
    page: {
      view: 'personal-data/keeping',
      data: { ...keeping, saved: null, groups: [], more: null, guests: null, kept: [] },
    } satisfies KeepingPage,
    staff: true,
  },
  { name: 'people-to-remove', page: { view: 'personal-data/people', data: people } satisfies PeoplePage, staff: true },
  {
    name: 'people-to-remove-none',
    page: { view: 'personal-data/people', data: { ...people, text: '', said: null, found: '0 people.', people: [] } } satisfies PeoplePage,
    staff: true,
  },
];
