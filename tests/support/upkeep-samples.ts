import type { ChangesPage, UpkeepPage } from '../../src/upkeep/page-types.js';

/** The administrator's pages as page data. People and figures are invented. */

const titleBlock = [{ label: 'Rungwise', value: '0.1.0', width: 12, name: false, id: false, href: null }] as const;

const well: UpkeepPage['data'] = {
  csrf: 'csrf-token',
  warnings: [],
  allWell: 'Nothing here needs you at the moment.',
  facts: [
    { label: 'Rungwise', value: '0.1.0' },
    { label: 'Database', value: 'PostgreSQL 18.4, which came with Rungwise' },
    { label: 'Disk with the backups', value: '41.2 GB free of 120 GB' },
  ],
  jobs: [
    {
      name: 'Backup, at night',
      last: 'Thu 26 November, 03:10',
      outcome: 'done',
      note: 'rungwise-2026-11-26-0310.backup, 52310 rows, 2.4 MB',
    },
  ],
  backups: [
    {
      name: 'rungwise-2026-11-26-0310.backup',
      size: '2.4 MB',
      at: 'Thu 26 November, 03:10',
      href: '/upkeep/backups/rungwise-2026-11-26-0310.backup',
    },
  ],
  removedHref: '/upkeep/backups/removed-people.txt',
  backupLead: 'Last good backup: Thu 26 November, 03:10.',
  sealed: true,
  sameDisk: false,
  why: null,
  taken: true,
  titleBlock: [...titleBlock],
};

const troubled: UpkeepPage['data'] = {
  ...well,
  taken: false,
  allWell: null,
  warnings: [
    { what: 'The last good backup is 3 days old.', todo: 'Take one now, below.' },
    { what: 'The disk is nearly full: 412 MB are free.', todo: 'Make room.' },
  ],
  jobs: [],
  backups: [],
  removedHref: null,
  sealed: false,
  sameDisk: true,
  why: 'Make room on the disk with the backups.',
};

const lines: ChangesPage['data'] = {
  changes: [
    { at: 'Thu 26 November, 19:31', who: 'H. <Vane>', what: 'makes a new return slip', about: 'class 1, person 12' },
    { at: 'Thu 26 November, 04:10', who: 'The server itself', what: 'removes somebody after the time that was set', about: 'person 3' },
  ],
  olderHref: '/upkeep/changes?before=17',
  titleBlock: [...titleBlock],
};

const of = <P>(name: string, page: P, title: string) => ({ name, page, title, layout: 'wide' as const });

export const upkeepPages = [
  of('upkeep', { view: 'upkeep/upkeep', data: well } satisfies UpkeepPage, 'Upkeep'),
  of('upkeep-fault', { view: 'upkeep/upkeep', data: troubled } satisfies UpkeepPage, 'Upkeep'),
  of('upkeep-changes', { view: 'upkeep/changes', data: lines } satisfies ChangesPage, 'What staff changed'),
  of(
    'upkeep-changes-none',
    { view: 'upkeep/changes', data: { ...lines, changes: [], olderHref: null } } satisfies ChangesPage,
    'What staff changed',
  ),
];
