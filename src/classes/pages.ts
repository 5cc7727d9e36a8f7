import { dayNumber, dayWords } from '../core/calendar.js';
import { may } from '../core/permissions.js';
import type { Person, TutorPage } from '../accounts/index.js';
import type { ClassesService } from './service.js';
import type { MemberRow, MistakeRow } from './store.js';

/** A tutor's first page: each class with its members, whoever has been away longest on top. */
export function tutorPage({ rows, mistakes, now }: Awaited<ReturnType<ClassesService['overview']>>, person: Person): TutorPage {
  const ids = [...new Set(rows.map((row) => row.classId))];
  const today = dayWords(dayNumber(now.getTime(), person.timeZone));
  return {
    view: 'home/tutor',
    data: {
      heading: ids.length === 1 ? 'Your class' : 'Classes',
      classes: ids.map((id) =>
        classPart(
          rows.filter((row) => row.classId === id),
          mistakes.filter((row) => row.classId === id),
          now,
        ),
      ),
      staffHref: may(person.role, 'invite-staff') ? '/staff' : null,
      titleBlock: [
        { label: 'Tutor', value: person.displayName, width: 6, name: true, id: false, href: null },
        { label: 'As of', value: today, width: 6, name: false, id: false, href: null },
      ],
    },
  };
}

/** More than these is no evening's work. */
const shownMistakes = 12;

function classPart(rows: MemberRow[], mistakes: MistakeRow[], now: Date): TutorPage['data']['classes'][number] {
  const [first] = rows as [MemberRow];
  return {
    name: first.className,
    exam: first.examOn === null ? null : dayWords(Math.round(Date.parse(first.examOn) / 86_400_000)),
    members: rows.filter((row) => row.personId !== null).map((row) => memberPart(row, now)),
    mistakes: mistakes.slice(0, shownMistakes).map(({ questionId, code, stem, names }) => ({
      href: `/bank/questions/${questionId}`,
      code,
      stem,
      names: names.join(', '),
    })),
  };
}

function memberPart(row: MemberRow, now: Date): TutorPage['data']['classes'][number]['members'][number] {
  const zone = row.timeZone ?? 'Europe/London';
  const today = dayNumber(now.getTime(), zone);
  return {
    name: row.name ?? '',
    answers: row.answers,
    rightShare: row.answers === 0 ? '–' : `${row.right} of ${row.answers}`,
    seen: row.lastSeenAt === null ? 'Not yet' : seenWords(today - dayNumber(row.lastSeenAt.getTime(), zone)),
    due: (row.dueDays ?? []).filter((day) => day <= today).length,
    surelyWrong: row.surelyWrong,
  };
}

function seenWords(days: number): string {
  if (days <= 0) return 'Today';
  return days === 1 ? 'Yesterday' : `${days} days ago`;
}
