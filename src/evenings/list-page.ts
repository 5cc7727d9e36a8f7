import type { Person } from '../accounts/index.js';
import { classTabs } from '../classes/index.js';
import { dayNumber, dayWords } from '../core/calendar.js';
import type { FieldPart } from '../core/page-parts.js';
import { regionIds, regionWords } from '../core/syllabus.js';
import { counted } from '../core/words.js';
import { field } from '../study/index.js';
import type { EveningsView } from './making-service.js';
import type { ListPage } from './page-types.js';
import type { EveningHead } from './rows.js';

/** The evenings of a class, and the form that makes another. */

/** What stands in the form: as typed, or as proposed. */
export interface EveningTyped {
  title: FieldPart;
  questions: FieldPart;
  count: FieldPart;
  region: string;
  /** Codes of topics. */
  topics: readonly string[];
}

export const usualCount = 6;

const plain = (value: string): FieldPart => ({ value, why: null });

export const proposed = ({ region, proposed: asked, now, head }: EveningsView): EveningTyped => ({
  title: plain(`Evening of ${dayWords(dayNumber(now.getTime(), head.timeZone), 'short')}`),
  questions: plain(asked.codes.join('\n')),
  count: plain(String(usualCount)),
  region,
  topics: [],
});

export function listPage(view: EveningsView, person: Person, csrf: string, id: string, typed: EveningTyped): ListPage {
  const { head, evenings, topics, now } = view;
  const root = `/classes/${head.classId}/evenings`;
  const running = evenings.find(({ endedAt, place }) => endedAt === null && place > 0);
  return {
    view: 'evenings/list',
    data: {
      tabs: classTabs(head.classId, '/evenings'),
      className: head.name,
      csrf,
      action: root,
      id,
      running: running === undefined ? null : { href: `${root}/${running.eveningId}`, text: `Go on with ${running.title}` },
      evenings: evenings.map((evening) => ({
        href: `${root}/${evening.eveningId}`,
        title: evening.title,
        state: stateOf(evening, head.timeZone),
        questions: evening.questions,
      })),
      title: typed.title,
      questions: typed.questions,
      count: typed.count,
      regions: regionIds.map((value) => ({ value, text: regionWords[value], chosen: value === typed.region })),
      topics: topics.map(({ code, title }) => ({ name: `topic-${code}`, text: `${code} ${title}`, ticked: typed.topics.includes(code) })),
      unfolded: typed.topics.length > 0,
      leftOut: leftOutWords(view.proposed.leftOut),
      fault: faultOf(typed),
      titleBlock: [
        field('Class', head.name, 4, { name: true }),
        field('Tutor', person.displayName, 4),
        field('As of', dayWords(dayNumber(now.getTime(), person.timeZone)), 4),
      ],
    },
  };
}

function stateOf({ endedAt, place, questions }: EveningHead, timeZone: string): string {
  if (endedAt !== null) return `held ${dayWords(dayNumber(endedAt.getTime(), timeZone), 'short')}`;
  return place === 0 ? 'ready' : `running, question ${place} of ${questions}`;
}

function leftOutWords(count: number): string | null {
  if (count === 0) return null;
  return `${counted(count, 'question')} of the plan ${count === 1 ? 'is' : 'are'} left out: only what one letter answers can be asked here, with the mains supply chosen below.`;
}

function faultOf({ questions, title, count }: EveningTyped): ListPage['data']['fault'] {
  const faults = [
    { why: title.why, target: 'title' },
    { why: questions.why, target: 'questions' },
    { why: count.why, target: 'count' },
  ];
  const first = faults.find(({ why }) => why !== null);
  return first === undefined ? null : { why: first.why ?? '', target: first.target };
}
