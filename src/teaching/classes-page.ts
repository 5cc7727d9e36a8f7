import { dayNumber, dayWords } from '../core/calendar.js';
import { may } from '../core/permissions.js';
import { counted } from '../core/words.js';
import { field } from '../study/index.js';
import type { Person } from '../accounts/index.js';
import type { ClassesPage } from './page-types.js';
import type { ClassLine } from './grid-store.js';
import { candidates, type ClassHead, examWords, meetingTimes } from '../classes/index.js';

/** A tutor's first page: each class, and the three questions of a tutor one press away. */

export interface ClassesView {
  heads: readonly ClassHead[];
  lines: readonly ClassLine[];
  now: Date;
}

export function classesPage({ heads, lines, now }: ClassesView, person: Person, warnings: readonly { what: string }[] = []): ClassesPage {
  const running = heads.filter(({ ended }) => !ended);
  return {
    view: 'home/tutor',
    data: {
      heading: running.length === 1 ? 'Your class' : 'Classes',
      warnings: warnings.map(({ what }) => ({ what })),
      classes: running.map((head) => {
        const root = `/classes/${head.classId}`;
        return {
          name: head.name,
          facts: [candidates(head.members), meetingTimes(head), examWords(head)].filter((part) => part !== null).join('; '),
          needs: needsOf(lines.find(({ classId }) => classId === head.classId)),
          helpHref: root,
          teachHref: `${root}/plan`,
          badHref: `${root}/questions`,
          peopleHref: `${root}/people`,
        };
      }),
      ended: heads.filter(({ ended }) => ended).map(({ name, classId }) => ({ name, href: `/classes/${classId}` })),
      newHref: '/classes/new',
      clubHref: '/club',
      analyseHref: '/analyse',
      staffHref: may(person.role, 'invite-staff') ? '/staff' : null,
      titleBlock: [
        field('Tutor', person.displayName, 6, { name: true }),
        field('As of', dayWords(dayNumber(now.getTime(), person.timeZone)), 6),
      ],
    },
  };
}

function needsOf(line: ClassLine | undefined): string | null {
  if (line === undefined) return null;
  const parts = [
    ...(line.away > 0 ? [`${counted(line.away, 'candidate')} not here for a week`] : []),
    ...(line.never > 0 ? [`${counted(line.never, 'candidate')} never here yet`] : []),
    ...(line.surelyWrong > 0 ? [`${line.surelyWrong} sure of something wrong`] : []),
  ];
  return parts.length === 0 ? null : `${parts.join('; ')}.`;
}
