import type { Person } from '../accounts/index.js';
import { dayNumber } from '../core/calendar.js';
import { inFours } from '../core/join-code.js';
import { may } from '../core/permissions.js';
import { qrOf } from '../core/qr-code.js';
import { counted } from '../core/words.js';
import { field } from '../study/index.js';
import type { MemberView, SlipsView } from './member-service.js';
import type { JoinSlipsPage, PersonPage, SlipsPage } from './people-page-types.js';
import type { PeopleView } from './people-service.js';
import { addressPart, dayOf, listed, momentWords } from './people-words.js';
import { classTabs } from './tabs.js';
import { daysSince, meetingTimes, seenWords } from './words.js';

/** One candidate of a class, and the slips that are printed for candidates. */

export function personPage(view: MemberView, person: Person, csrf: string): PersonPage {
  const { head, member, others, now } = view;
  const root = `/classes/${head.classId}/people`;
  const seen = seenWords(daysSince(member.lastSeenAt, dayNumber(now.getTime(), head.timeZone), head.timeZone));
  return {
    view: 'classes/people-person',
    data: {
      csrf,
      name: member.name,
      className: head.name,
      back: root,
      tabs: classTabs(head.classId, '/people'),
      facts: [
        `In the class since ${dayOf(member.joinedAt, head.timeZone)}.`,
        `Last here: ${seen}.`,
        ...(member.slipAt === null
          ? []
          : [
              `A new return slip was last made on ${momentWords(member.slipAt, head.timeZone)} by ${member.slipBy ?? 'a tutor who is no longer here'}.`,
            ]),
      ],
      removeWholly: may(person.role, 'remove-people') ? `/people/${member.personId}/remove` : null,
      slipAction: `${root}/${member.personId}/slip`,
      before: member.slipAt?.toISOString() ?? '',
      moveAction: `${root}/${member.personId}/move`,
      others: others.map(({ classId, name }) => ({ value: String(classId), text: name, chosen: false })),
      removeAction: `${root}/${member.personId}/remove`,
      titleBlock: [
        field('Candidate', member.name, 6, { name: true }),
        field('Class', head.name, 6),
        field('As of', momentWords(now, person.timeZone), 12),
      ],
    },
  };
}

export function slipsPage({ head, slips, now }: SlipsView, person: Person, origin: string): SlipsPage {
  const back = `/classes/${head.classId}/people`;
  return {
    view: 'classes/slips',
    data: {
      className: head.name,
      back,
      kept: `${back}/slips/kept`,
      slips,
      heading: slips.length === 0 ? 'No slip to show' : counted(slips.length, 'return slip'),
      address: addressPart(`${origin}/return`),
      qr: qrOf(`${origin}/return`),
      foot: `${head.name}. Made on ${dayOf(now, head.timeZone)} by ${person.displayName}.`,
      titleBlock: [field('Class', head.name, 6, { name: true }), field('As of', momentWords(now, person.timeZone), 6)],
    },
  };
}

/** Sheets of four. */
const copies = [4, 8, 12, 16, 20, 24, 28, 32];

export function joinSlipsPage(view: PeopleView, wished: number, person: Person, origin: string): JoinSlipsPage {
  const { head, code, now } = view;
  const root = `/classes/${head.classId}/people`;
  const count = copies.includes(wished) ? wished : 4;
  const open = code !== null && code.until > now ? code : null;
  return {
    view: 'classes/join-slips',
    data: {
      className: head.name,
      back: root,
      action: `${root}/join-slips`,
      slip:
        open === null
          ? null
          : {
              meeting: meetingTimes(head),
              tutors: listed(head.tutors),
              fours: inFours(open.code),
              until: momentWords(open.until, head.timeZone),
              address: addressPart(`${origin}/join`),
              qr: qrOf(`${origin}/join/${open.code}`),
            },
      copies: copies.map((number) => ({ value: String(number), text: counted(number, 'slip'), chosen: number === count })),
      places: open === null ? [] : Array.from({ length: count }, (_, index) => index),
      titleBlock: [field('Class', head.name, 6, { name: true }), field('As of', momentWords(now, person.timeZone), 6)],
    },
  };
}
