import type { Person } from '../accounts/index.js';
import { field } from '../study/index.js';
import type { OpenPage } from './page-types.js';
import type { EveningHead } from './rows.js';

/**
 * For a candidate whose classes have several evenings running, or none.
 * @param ready whether one is there that has not begun
 */
export function openPage(running: readonly EveningHead[], ready: boolean, person: Person): OpenPage {
  const waits = ready ? 'No class evening has begun yet' : 'No class evening is on';
  return {
    view: 'evenings/open',
    data: {
      headline: running.length > 0 ? 'Which evening are you at?' : waits,
      lead: ready
        ? 'Keep this page open. It goes on by itself when your tutor begins.'
        : 'When your tutor begins one, it opens here. If your tutor says that it is on, ask whether you are in the class.',
      evenings: running.map(({ eveningId, title, className, place, questions }) => ({
        href: `/evening/${eveningId}`,
        text: title,
        className,
        state: `question ${place} of ${questions}`,
      })),
      titleBlock: [field('Candidate', person.displayName, 12, { name: true })],
    },
  };
}
