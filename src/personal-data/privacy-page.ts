import { field } from '../study/index.js';
import type { PrivacyPage, RemovedPage } from './page-types.js';

/** What is kept here, in plain words, for a parent too; and the last page that somebody who was removed sees. */

export const privacyPage = ({ months, contact }: { months: number; contact: string }): PrivacyPage => ({
  view: 'personal-data/privacy',
  data: {
    months,
    contact: contact === '' ? null : contact,
    titleBlock: [field('Sheet', 'What is kept here', 8, { name: true }), field('For', 'Everybody', 4)],
  },
});

export const removedPage = (): RemovedPage => ({
  view: 'personal-data/removed',
  data: { titleBlock: [field('Sheet', 'Removed', 8, { name: true }), field('For', 'You', 4)] },
});
