import type { Person } from '../accounts/index.js';
import { dayNumber, dayWords } from '../core/calendar.js';
import { counted } from '../core/words.js';
import { field } from '../study/index.js';
import { kindWords, ofStaffOnly } from './held-kinds.js';
import type { HeldPart, HeldView, WholeView } from './held-service.js';
import { timeIn } from './held-words.js';
import type { DataPage, KindPart, WholePage } from './page-types.js';

/** What is held about somebody: in short, and line by line. */

export function dataPage(view: HeldView, person: Person): DataPage {
  return {
    view: 'personal-data/data',
    data: {
      candidate: person.role === 'candidate',
      lead: keptWords(view, person),
      ...kindParts(view.kinds, person),
      titleBlock: titleBlock(view, person),
    },
  };
}

export function wholePage(view: WholeView, person: Person): WholePage {
  const { part, parts } = view;
  const address = (other: number): string => `/me/data/all?part=${other}`;
  return {
    view: 'personal-data/whole',
    data: {
      name: person.displayName,
      lead: `${keptWords(view, person)}${parts === 1 ? '' : ` This is part ${part} of ${parts}.`}`,
      ...kindParts(view.kinds, person),
      before: part > 1 ? address(part - 1) : null,
      after: part < parts ? address(part + 1) : null,
      titleBlock: titleBlock(view, person),
    },
  };
}

const keptWords = ({ months }: HeldView, { role }: Person): string =>
  role === 'candidate'
    ? `It is kept until you have it removed, or until ${months} months after your last visit. Where that differs, it is said.`
    : 'It is kept until an administrator removes you. Where that differs, it is said.';

function kindParts(kinds: readonly HeldPart[], person: Person): { kinds: KindPart[]; none: string[] } {
  const time = timeIn(person.timeZone);
  const part = ({ kind, count, rows }: HeldPart): KindPart => {
    const { title, seen, kept, line } = kindWords[kind];
    return { id: kind.replace(/_/g, '-'), title, count: counted(count, 'line'), seen, kept, lines: rows.map((row) => line(row, time)) };
  };
  return {
    kinds: kinds.filter(({ count }) => count > 0).map(part),
    none: kinds
      .filter(({ kind, count }) => count === 0 && !(person.role === 'candidate' && ofStaffOnly.has(kind)))
      .map(({ kind }) => kindWords[kind].title.toLowerCase()),
  };
}

const titleBlock = ({ now }: HeldView, person: Person) => [
  field('About', person.displayName, 6, { name: true }),
  field('As of', dayWords(dayNumber(now.getTime(), person.timeZone)), 6),
];
