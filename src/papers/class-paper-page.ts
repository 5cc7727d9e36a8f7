import { nearPassMark, reliabilityWords } from '../core/analysis/reliability-words.js';
import { paperFigures } from '../core/analysis/reliability.js';
import { keyLetter } from '../core/papers/sheet.js';
import { stateOf } from '../core/papers/time.js';
import { counted } from '../core/words.js';
import type { Person } from '../accounts/index.js';
import { field } from '../study/index.js';
import type { PaperMarks, RollRow } from './class-store.js';
import { extraTimes } from './forms.js';
import { extraWords } from './list-page.js';
import type { ClassPaperPage } from './set-page-types.js';
import type { ReviewView, SetView } from './set-service.js';
import { windowWords } from './window-words.js';

/** One paper of a class: who has handed in, how it went, and what can be done with it. */

/** @param results null before anybody has handed in */
export function classPaperPage(
  view: SetView,
  results: { review: ReviewView; marks: PaperMarks } | null,
  person: Person,
  csrf: string,
): ClassPaperPage {
  const { head, roll, now } = view;
  const { blueprint } = head;
  const root = `/class-papers/${head.paperId}`;
  return {
    view: 'papers/class-paper',
    data: {
      csrf,
      title: head.title,
      lead: `${head.className ?? ''}: ${windowWords(head, now, person)}. ${handedInWords(roll)}`,
      close: head.closesAt !== null && head.closesAt > now ? `${root}/close` : null,
      links: [
        { href: `${root}/print`, text: 'Print papers, answer sheets and the key' },
        { href: `${root}/enter`, text: 'Type in results from paper' },
        { href: `${root}/review/1`, text: 'Go through it with the class' },
        { href: `${root}/results.csv`, text: 'Results as a CSV file' },
      ],
      remarked: remarkedWords(roll),
      roll: roll.map((row) => rollPart(row, view)),
      questions: results === null ? [] : hardest(results.review),
      reliability: results === null ? null : reliabilityPart(results.marks, blueprint.passMark),
      titleBlock: [
        field('Paper', head.title, 6, { name: true }),
        field('Class', head.className ?? '', 6),
        field('Specification', `${counted(blueprint.questions, 'question')}, ${blueprint.minutes} min, pass mark ${blueprint.passMark}`, 6),
        field('Versions', String(head.versions), 2),
        field('Pack', `${head.packTitle} ${head.packVersion}`, 4),
      ],
    },
  };
}

/** All versions ask the same questions, so that they are one paper here. */
function reliabilityPart({ rights, totals }: PaperMarks, passMark: number): ClassPaperPage['data']['reliability'] {
  const figures = paperFigures(rights, totals);
  return { ...reliabilityWords(figures), near: nearPassMark(figures, totals, passMark) };
}

/** Those that fewest had right first. */
function hardest({ head, items, counts }: ReviewView): ClassPaperPage['data']['questions'] {
  const rows = items.map((item, index) => {
    const { options, handedIn } = counts[index] ?? { options: [], handedIn: 0 };
    const right = options[keyLetter(item.task).charCodeAt(0) - 65] ?? 0;
    return { item, right, handedIn };
  });
  rows.sort((a, b) => a.right - b.right || a.item.position - b.item.position);
  return rows.map(({ item: { position, bank }, right, handedIn }) => ({
    href: `/class-papers/${head.paperId}/review/${position}`,
    position,
    objective: bank.objective.code,
    title: bank.objective.title,
    right: `${right} of ${handedIn}`,
  }));
}

function handedInWords(roll: readonly RollRow[]): string {
  const done = roll.filter(({ sitting }) => sitting !== null && sitting.handedInAt !== null);
  const passed = done.filter(({ sitting }) => sitting?.passed === true).length;
  if (done.length === 0) return 'Nobody has handed in yet.';
  return `${done.length} of ${roll.length} handed in, ${passed} passed.`;
}

function remarkedWords(roll: readonly RollRow[]): string | null {
  const count = roll.filter(({ sitting }) => sitting !== null && sitting.remarkedAt !== null).length;
  return count === 0
    ? null
    : `A key was corrected after this paper was made: ${counted(count, 'paper')} ${count === 1 ? 'was' : 'were'} marked again.`;
}

function rollPart(row: RollRow, { head, now }: SetView): ClassPaperPage['data']['roll'][number] {
  const { sitting, memberId, name, memberExtraTime } = row;
  const root = `/class-papers/${head.paperId}`;
  const done = sitting !== null && sitting.handedInAt !== null;
  const changed =
    sitting !== null && sitting.firstRight !== null && sitting.firstRight !== sitting.right ? ` (was ${sitting.firstRight})` : '';
  const choices = extraTimes.map((percent) => ({ value: String(percent), text: extraWords(percent), chosen: percent === memberExtraTime }));
  return {
    name,
    version: sitting === null ? '' : String(sitting.version),
    state: stateWords(row, now, head.blueprint.questions),
    mark: done ? `${sitting.right ?? 0}${changed}, ${sitting.passed === true ? 'passed' : 'not passed'}` : '',
    extra:
      memberId === null || done || (head.closesAt !== null && head.closesAt <= now)
        ? null
        : { action: `${root}/extra-time`, member: String(memberId), choices, label: `Extra time for ${name}` },
    guest: sitting !== null && sitting.guestName !== null ? `${root}/enter?correct=${sitting.sittingId}#remove` : null,
  };
}

function stateWords({ sitting, answered }: RollRow, now: Date, questions: number): string {
  if (sitting === null) return 'not begun';
  switch (stateOf(sitting, now.getTime())) {
    case 'handed-in':
      return sitting.way === 'sheet' ? 'on paper' : 'handed in';
    case 'waiting':
      return 'not begun';
    default:
      return `${answered} of ${questions} answered`;
  }
}
