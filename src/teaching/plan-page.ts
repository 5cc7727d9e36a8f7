import { dayNumber, dayWords } from '../core/calendar.js';
import type { CautionPart } from '../core/page-parts.js';
import type { Caution } from '../core/syllabus.js';
import { counted, shortened } from '../core/words.js';
import { field } from '../study/index.js';
import type { Person } from '../accounts/index.js';
import type { PlanPage } from './page-types.js';
import { teachHeading } from './grid-page.js';
import type { PlanItem, PlanView } from './plan-service.js';
import { asideWords, costWords, mistakeWords, restsOn } from './plan-words.js';
import { candidates, classTabs, paperNote } from '../classes/index.js';

/** What to teach at the next meeting: one page, also on paper. */

/** What an objective takes that is taught again, and what the opener takes (common practice, no source). */
const minutesFor = { item: 20, opener: 15 } as const;
const shownWarned = 2;
const shownUnsure = 6;

export function planPage(view: PlanView, person: Person): PlanPage {
  const { grid, items, opener, meeting } = view;
  const { head } = grid;
  const root = `/classes/${head.classId}`;
  const [first] = opener;
  return {
    view: 'teaching/plan',
    data: {
      tabs: classTabs(head.classId, '/plan'),
      name: head.name,
      heading: teachHeading(meeting),
      lead: leadOf(view),
      note: paperNote(head, grid.paper === null ? null : { chosen: grid.paper.chosen, title: grid.paper.paper.blueprint.title }),
      items: items.map((item, index) => itemPart(item, index, grid.rows.length)),
      opener: opener.map(({ questionId, code, stem, wrong }) => ({
        href: `/bank/questions/${questionId}`,
        code,
        stem: shortened(stem),
        wrong: wrong === 0 ? '' : `${wrong} had it wrong last time`,
      })),
      eveningHref: first === undefined ? null : `${root}/evenings?questions=${opener.map(({ questionId }) => questionId).join(',')}`,
      practical: practicalPart(view, root),
      aside: asideWords(grid),
      unsure: view.unsure.slice(0, shownUnsure).map(({ objective, title, met, people }) => ({
        code: objective,
        title,
        answers: met === 0 ? 'never asked' : `${counted(met, 'question')} met, by ${people}`,
      })),
      cautions: view.cautions.map(cautionOf),
      titleBlock: [
        field('Class', head.name, 4, { name: true }),
        field('Meeting', meeting === null ? 'no fixed day' : `${dayWords(meeting)}, ${head.meetsAt ?? ''}`, 4),
        field('Tutors', head.tutors.join(', '), 4),
        field('Rests on', grid.paper === null ? 'no paper' : grid.paper.paper.blueprint.title, 4),
        field('Candidates', candidates(grid.rows.length), 4),
        field('As of', dayWords(dayNumber(grid.now.getTime(), person.timeZone)), 4),
      ],
    },
  };
}

const cautionOf = ({ sign, text }: Caution): CautionPart => ({ sign, text });

function leadOf({ grid, items, unsure }: PlanView): string {
  if (grid.rows.length === 0) return 'Nobody is in this class yet, so there is nothing to plan from.';
  if (items.length === 0)
    return `Too few answers to tell. An objective is told of from ten questions on, met by at least ${Math.min(3, grid.rows.length)} of the class. Let the class practise, or begin with an evening of questions.`;
  const total = [...items.map(({ rank }) => rank.mean)].reduce((sum, each) => sum + each, 0);
  const few = unsure.length === 0 ? '' : ` Of ${counted(unsure.length, 'objective')} too little is known yet.`;
  return `The objectives that would cost the class most on its paper, as things stand: together ${total.toFixed(1)} marks a candidate.${few}`;
}

function itemPart({ rank, objective, topicTitle, mistakes }: PlanItem, index: number, members: number): PlanPage['data']['items'][number] {
  return {
    number: index + 1,
    title: objective.title,
    where: `${objective.code}, ${topicTitle}. About ${minutesFor.item} minutes.`,
    costs: `${costWords(rank)} ${restsOn(rank, members)}`,
    mistakes: mistakes.map(mistakeWords),
    warned: mistakes.length > 0 ? [] : objective.misconceptions.slice(0, shownWarned),
    mustKnow: objective.mustKnow,
  };
}

function practicalPart({ practical }: PlanView, root: string): PlanPage['data']['practical'] {
  if (practical === null) return null;
  const { skill } = practical;
  return {
    title: skill.title,
    minutes: skill.minutes,
    brings: skill.brings,
    showing: skill.showing,
    href: `${root}/skills`,
  };
}
