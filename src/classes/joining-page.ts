import { regions, slipPart, type Person } from '../accounts/index.js';
import { shortDate } from '../core/calendar.js';
import type { FieldPart } from '../core/page-parts.js';
import { field } from '../study/index.js';
import type { JoinFoundPage, JoinPage, OwnClassesPage } from './joining-page-types.js';
import type { OwnView } from './joining-service.js';
import type { OpenClass } from './joining-store.js';
import { dayOf, listed } from './people-words.js';
import { examWords, meetingTimes } from './words.js';
import type { SaidPart } from './people-page-types.js';

/** Joining a class, and one's own classes. */

/** Said of every code that opens nothing, whatever the reason: a stranger learns nothing from it. */
export const deadCode =
  'No class can be joined by this code. Look at each letter again. If it is right, the code has run out or was closed: ask your tutor for a new one.';

const empty: FieldPart = { value: '', why: null };

export const joinPage = (
  person: Person | null,
  csrf: string,
  code: FieldPart = empty,
  kept: JoinPage['data']['kept'] = null,
): JoinPage => ({
  view: 'classes/join',
  data: { csrf, code, kept, who: { visitor: person === null, staff: person !== null && person.role !== 'candidate' } },
});

/** What somebody who is not in yet wrote about themselves, and why it does not fit. */
export interface StartTyped {
  startToken: string;
  name: FieldPart;
  region: string;
}

export function joinFoundPage(
  found: OpenClass,
  who: { person: Person | null; isIn: boolean },
  csrf: string,
  code: string,
  typed: StartTyped,
): JoinFoundPage {
  const { person, isIn } = who;
  const candidate = person?.role === 'candidate';
  return {
    view: 'classes/join-found',
    data: {
      csrf,
      code,
      name: found.name,
      facts: [
        tutorWords(found.tutors),
        ...(meetingTimes(found) === null ? [] : [`It meets on ${meetingTimes(found)}.`]),
        ...(found.examOn === null ? [] : [`${capital(examWords(found))}.`]),
      ],
      start: person === null ? { startToken: typed.startToken, name: typed.name, regions: regions(typed.region) } : null,
      join: candidate && !isIn,
      already: candidate && isIn,
      staff: person !== null && !candidate,
      titleBlock: [
        field('Class', found.name, 6, { name: true }),
        field('Exam', found.examOn === null ? 'No date yet' : shortDate(found.examOn), 6),
      ],
    },
  };
}

const said: Readonly<Record<string, SaidPart>> = {
  joined: { word: 'You are in the class.', text: 'Your tutors see from now on how you are getting on.' },
  already: { word: 'You are in this class already.', text: 'Nothing has changed.' },
  left: {
    word: 'You have left the class.',
    text: 'Your tutors there no longer see you, except for papers of the class that you have handed in. Your answers stay yours, and a paper that is open can be finished.',
  },
};

export function ownClassesPage({ classes, slip }: OwnView, person: Person, csrf: string, word: unknown): OwnClassesPage {
  return {
    view: 'classes/mine',
    data: {
      csrf,
      said: typeof word === 'string' && Object.hasOwn(said, word) ? (said[word] ?? null) : null,
      classes: classes.map((own) => ({
        name: own.name,
        tutors: tutorWords(own.tutors),
        facts: [`You are in it since ${dayOf(own.joinedAt, person.timeZone)}`, meetingTimes(own), examWords(own)]
          .filter((part) => part !== null)
          .join('; '),
        leave: `/my-classes/${own.classId}/leave`,
        ended: own.ended,
      })),
      slip: slip === null ? null : slipPart(slip, person),
      titleBlock: [field('Candidate', person.displayName, 6, { name: true }), field('Classes', String(classes.length), 6)],
    },
  };
}

const tutorWords = (names: readonly string[]): string =>
  names.length === 0 ? 'It has no tutor just now.' : `${names.length === 1 ? 'Tutor' : 'Tutors'}: ${listed(names)}.`;

const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);
