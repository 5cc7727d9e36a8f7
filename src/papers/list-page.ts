import { dayWords, isoDay } from '../core/calendar.js';
import { stateOf } from '../core/papers/time.js';
import { counted } from '../core/words.js';
import type { Person } from '../accounts/index.js';
import { field } from '../study/index.js';
import { dayOf } from './days.js';
import { extraTimes } from './forms.js';
import type { CoverPage, PapersPage } from './page-types.js';
import { sittingTitleBlock } from './sitting-page.js';
import type { PapersView } from './own-papers-service.js';
import type { SittingWithPaper } from './sitting-store.js';

/** A candidate's papers: what is running, what is open, what can be made, what was sat. */

export const extraWords = (percent: number): string => (percent === 0 ? 'No extra time' : `${percent} % more`);

export function papersPage(view: PapersView, person: Person, csrf: string, sitting: string): PapersPage {
  const running = view.sittings.filter((each) => stateOf(each, view.now.getTime()) === 'running' || isWaiting(each, view.now));
  return {
    view: 'papers/papers',
    data: {
      csrf,
      sitting,
      running: running.map((each) => ({
        href: `/papers/sittings/${each.sittingId}`,
        label: `${each.startedAt === null ? 'Begin' : 'Carry on with'} ${each.title}`,
        note: each.startedAt === null ? 'The clock has not started.' : 'The clock is running.',
      })),
      open: view.open
        .filter(({ paperId }) => !view.sittings.some((each) => each.paperId === paperId))
        .map(({ paperId, title, className, blueprint }) => ({
          action: `/papers/${paperId}/sit`,
          label: `Take up ${title}`,
          note: `${className ?? 'Your class'}: ${counted(blueprint.questions, 'question')}, ${blueprint.minutes} minutes.`,
        })),
      papers: view.offered
        .filter(({ lacking }) => lacking === null)
        .map(({ name, paper: { blueprint, packTitle }, planned }) => ({
          value: name,
          text: `${blueprint.title}: ${blueprint.minutes} min, ${blueprint.passMark} of ${blueprint.questions} to pass (${packTitle})`,
          chosen: planned,
        })),
      lacking: view.offered.flatMap(({ lacking, paper }) => (lacking === null ? [] : [{ text: paper.blueprint.title, why: lacking }])),
      extra: extraTimes.map((percent) => ({ value: String(percent), text: extraWords(percent) })),
      done: doneOf(view).map((each) => doneRow(each, person)),
      titleBlock: [field('Candidate', person.displayName, 6, { name: true }), field('As of', dayWords(view.day), 6)],
    },
  };
}

const doneOf = ({ sittings }: PapersView): SittingWithPaper[] =>
  sittings.filter(({ handedInAt }) => handedInAt !== null).sort((a, b) => (b.handedInAt?.getTime() ?? 0) - (a.handedInAt?.getTime() ?? 0));

/** Made or taken up, and not begun; a class paper only while it is open. */
const isWaiting = ({ startedAt, handedInAt, closesAt }: SittingWithPaper, now: Date): boolean =>
  startedAt === null && handedInAt === null && (closesAt === null || closesAt > now);

function doneRow(sitting: SittingWithPaper, person: Person): PapersPage['data']['done'][number] {
  const day = dayOf(sitting.handedInAt ?? sitting.madeAt, person);
  return {
    href: `/papers/sittings/${sitting.sittingId}`,
    title: sitting.title,
    iso: isoDay(day),
    day: dayWords(day, 'short'),
    mark: `${sitting.right ?? 0} of ${sitting.blueprint.questions}`,
    passed: `${sitting.passed === true ? 'passed' : 'not passed'}${sitting.way === 'sheet' ? '; on paper, typed in by a tutor' : ''}`,
  };
}

export function coverPage(sitting: SittingWithPaper, person: Person, csrf: string): CoverPage {
  const { blueprint, extraTime } = sitting;
  const minutes = Math.round(blueprint.minutes * (1 + extraTime / 100));
  return {
    view: 'papers/cover',
    data: {
      csrf,
      action: `/papers/sittings/${sitting.sittingId}/begin`,
      title: sitting.title,
      facts: [
        { label: 'Questions', value: String(blueprint.questions) },
        { label: 'Time', value: `${minutes} minutes${extraTime === 0 ? '' : `, extra time included`}` },
        { label: 'To pass', value: `${blueprint.passMark} right` },
      ],
      titleBlock: sittingTitleBlock({ sitting }, person),
    },
  };
}
