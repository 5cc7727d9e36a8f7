import { regions, type Person } from '../accounts/index.js';
import { dayNumber, isoDay, shortDate } from '../core/calendar.js';
import { inFours } from '../core/join-code.js';
import { qrOf } from '../core/qr-code.js';
import type { FieldPart } from '../core/page-parts.js';
import { roleWords, type Role } from '../core/permissions.js';
import { counted } from '../core/words.js';
import type { PaperRow } from '../questions/index.js';
import { field } from '../study/index.js';
import type { MemberRow } from './member-store.js';
import { classFields, emptyClass, faultIn, typedClass, type ClassTyped } from './people-fields.js';
import type { Choice, NewClassPage, PeoplePage, SaidPart } from './people-page-types.js';
import type { PeopleView } from './people-service.js';
import { addressPart, momentWords } from './people-words.js';
import { classTabs } from './tabs.js';
import { candidates, daysSince, examWords, meetingTimes, seenWords } from './words.js';

/** Making a class, and everything about one and its people. */

export function newClassPage(
  papers: readonly PaperRow[],
  person: Person,
  csrf: string,
  startToken: string,
  typed: ClassTyped = emptyClass,
): NewClassPage {
  return {
    view: 'classes/new',
    data: {
      csrf,
      startToken,
      fields: classFields(typed, papers, null),
      fault: faultIn(typed),
      titleBlock: [field('Tutor', person.displayName, 6, { name: true }), field('Times are of', person.timeZone, 6)],
    },
  };
}

/** What the page around a form needs: its token, one for the next candidates, the address people reach the server by, and what was done. */
export interface PeopleFrame {
  csrf: string;
  addToken: string;
  origin: string;
  said: SaidPart | null;
}

/** What came back from one of the page's forms. */
export interface PeopleTyped {
  fields?: ClassTyped;
  add?: { names: FieldPart; region: string };
}

export function peoplePage(view: PeopleView, person: Person, frame: PeopleFrame, typed: PeopleTyped = {}): PeoplePage {
  const { head, tutors, now } = view;
  const root = `/classes/${head.classId}/people`;
  const names = typed.add?.names ?? { value: '', why: null };
  const fields = typed.fields ?? typedClass(head);
  return {
    view: 'classes/people',
    data: {
      csrf: frame.csrf,
      root,
      name: head.name,
      tabs: classTabs(head.classId, '/people'),
      fault: names.why === null ? faultIn(fields) : { why: names.why, target: 'names' },
      said: frame.said,
      lead: leadOf(view),
      ...membersPart(view, root),
      ended: head.ended,
      endAction: `${root}/end`,
      add: { action: `${root}/add`, token: frame.addToken, names, regions: regions(typed.add?.region ?? person.region) },
      ...codePart(view, root, frame.origin),
      tutors: tutors.map(({ personId, name, role }) => ({
        name,
        role: roleWords[role as Role],
        id: String(personId),
        you: personId === person.id,
        remove: tutors.length > 1 ? `${root}/tutors/remove` : null,
      })),
      tutorAction: `${root}/tutors`,
      otherStaff: view.otherStaff.map(({ personId, name, role }) => plainChoice(String(personId), `${name} (${roleWords[role as Role]})`)),
      classAction: `${root}/class`,
      fields: classFields(fields, view.papers, head.paper),
      fieldsOpen: typed.fields !== undefined,
      titleBlock: [
        field('Class', head.name, 6, { name: true }),
        field('As of', momentWords(now, person.timeZone), 6),
        field('Times of the class are of', head.timeZone, 12),
      ],
    },
  };
}

const plainChoice = (value: string, text: string, chosen = false): Choice => ({ value, text, chosen });

function leadOf({ head, tutors }: PeopleView): string {
  const parts = [
    candidates(head.members),
    counted(tutors.length, 'tutor'),
    ...(head.ended ? ['the course has ended'] : []),
    meetingTimes(head) ?? 'no fixed day',
    examWords(head),
  ];
  return `${parts.join('; ')}.`;
}

const membersPart = ({ head, members, leaving, now }: PeopleView, root: string): Pick<PeoplePage['data'], 'members' | 'leaving'> => ({
  members: members.map((member) => memberLine(member, root, head.timeZone, now)),
  leaving: leaving.map(({ personId, name, removeOn }) => ({ name, on: shortDate(removeOn), keep: `${root}/${personId}/keep` })),
});

const memberLine = (member: MemberRow, root: string, timeZone: string, now: Date): PeoplePage['data']['members'][number] => ({
  href: `${root}/${member.personId}`,
  name: member.name,
  joined: shortDate(isoDay(dayNumber(member.joinedAt.getTime(), timeZone))),
  seen: seenWords(daysSince(member.lastSeenAt, dayNumber(now.getTime(), timeZone), timeZone)),
});

function codePart(
  { head, code, now }: PeopleView,
  root: string,
  origin: string,
): Pick<PeoplePage['data'], 'code' | 'codeNote' | 'codeAction' | 'days'> {
  const open = code !== null && code.until > now ? code : null;
  return {
    code:
      open === null
        ? null
        : {
            fours: inFours(open.code),
            until: momentWords(open.until, head.timeZone),
            address: addressPart(`${origin}/join`),
            qr: qrOf(`${origin}/join/${open.code}`),
            printHref: `${root}/join-slips`,
          },
    codeNote:
      code !== null && open === null
        ? `The code ${inFours(code.code)} ran out on ${momentWords(code.until, head.timeZone)}: it opens nothing now.`
        : null,
    codeAction: `${root}/code`,
    days: [plainChoice('1', 'for one day'), plainChoice('7', 'for a week', true), plainChoice('30', 'for 30 days')],
  };
}
