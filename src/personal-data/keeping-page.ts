import type { Person } from '../accounts/index.js';
import { shortDate } from '../core/calendar.js';
import { keepChoices, noticeDays } from '../core/retention.js';
import { counted } from '../core/words.js';
import { field } from '../study/index.js';
import { timeIn } from './held-words.js';
import type { KeepingPage } from './page-types.js';
import type { KeepingView } from './retention-service.js';
import type { LeavingRow } from './retention-store.js';

/** What is kept and how long, and who will go: said before it happens. */

/** Names on one page; more are told as a number. */
const mostNames = 300;

const said: Readonly<Record<string, string>> = {
  saved: 'The new time counts from the next night on.',
  kept: 'Kept for a year more, and the notice is taken back.',
};

export function keepingPage(view: KeepingView, person: Person, csrf: string, word: unknown): KeepingPage {
  const { months, contact, leaving, guests, kept, now } = view;
  const shown = leaving.slice(0, mostNames);
  return {
    view: 'personal-data/keeping',
    data: {
      csrf,
      saved: typeof word === 'string' && Object.hasOwn(said, word) ? (said[word] ?? null) : null,
      contact: { value: contact, why: null },
      months: keepChoices.map((choice) => ({ value: String(choice), text: `${choice} months`, chosen: choice === months })),
      lead: leadOf(view),
      groups: groupsOf(shown, person),
      more: leaving.length > mostNames ? `And ${counted(leaving.length - mostNames, 'candidate')} more.` : null,
      guests:
        guests === 0
          ? null
          : `${counted(guests, 'name')} on printed sheets ${guests === 1 ? 'is' : 'are'} taken off within the next ${noticeDays} days, since the sheets are as old as that. The letters stay.`,
      kept: kept.map(({ name, until }) => ({ name, until: shortDate(until) })),
      titleBlock: [
        field('Kept', `${months} months after the last visit`, 6, { name: true }),
        field('As of', timeIn(person.timeZone)(now), 6),
      ],
    },
  };
}

const leadOf = ({ leaving }: KeepingView): string =>
  leaving.length === 0
    ? 'Nobody is to be removed within the next 14 days.'
    : `${counted(leaving.length, 'candidate')} will be removed, unless they come back.`;

function groupsOf(rows: readonly LeavingRow[], { timeZone }: Person): KeepingPage['data']['groups'] {
  const groups = new Map<string, KeepingPage['data']['groups'][number]['people']>();
  for (const { id, name, lastSeenAt, removeOn, className } of rows) {
    const group = groups.get(className ?? '') ?? [];
    groups.set(className ?? '', group);
    group.push({
      name,
      seen: lastSeenAt === null ? 'never' : timeIn(timeZone)(lastSeenAt),
      removeOn: shortDate(removeOn),
      keepAction: `/upkeep/keeping/${id}`,
      keepLabel: `Keep ${name} for a year more`,
    });
  }
  return [...groups].map(([className, people]) => ({ className: className === '' ? 'In no class' : className, people }));
}
