import type { Person } from '../accounts/index.js';
import { dayWords, isoDay } from '../core/calendar.js';
import { dayBars } from '../core/charts/day-bars.js';
import type { FieldPart } from '../core/page-parts.js';
import type { ForecastDay } from '../core/plan/forecast.js';
import { phaseOf, weekdayOf } from '../core/plan/settings.js';
import { field, nameOf } from '../study/index.js';
import type { PlanPage } from './page-types.js';
import type { PlanView } from './service.js';

/** The plan: the form, and what it means for each day. */

export interface PlanTyped {
  exam: FieldPart;
  minutes: FieldPart;
  daysOff: FieldPart;
  weekdaysOff: readonly number[];
  paper: string | null;
}

const weekdays = ['Sunday', 'Monday', 'Tuesday', 'Wednesday', 'Thursday', 'Friday', 'Saturday'];

export const typedOf = ({ planning: { plan } }: PlanView): PlanTyped => ({
  exam: plain(plan.examDay === null ? '' : isoDay(plan.examDay)),
  minutes: plain(String(plan.minutes)),
  daysOff: plain(plan.daysOff.map(isoDay).join('\n')),
  weekdaysOff: plan.weekdaysOff,
  paper: plan.paper,
});

const plain = (value: string): FieldPart => ({ value, why: null });

export function planPage(view: PlanView, person: Person, csrf: string, typed: PlanTyped, saved: boolean): PlanPage {
  const { planning, days, calendar } = view;
  const chosen = typed.paper ?? (planning.paper === null ? null : nameOf(planning.paper));
  return {
    view: 'plan/plan',
    data: {
      csrf,
      ...words(view),
      saved,
      exam: typed.exam,
      minutes: typed.minutes,
      daysOff: typed.daysOff,
      // The week begins on Monday, as on the calendars of most who come here.
      weekdays: [1, 2, 3, 4, 5, 6, 0].map((weekday) => ({
        value: String(weekday),
        name: weekdays[weekday] ?? '',
        off: typed.weekdaysOff.includes(weekday),
      })),
      papers: planning.papers.map((paper) => ({
        value: nameOf(paper),
        text: `${paper.blueprint.title}, ${paper.blueprint.passMark} to pass (${paper.packTitle})`,
        chosen: nameOf(paper) === chosen,
      })),
      chart: dayBars(
        days.map(({ day, fresh, again }) => ({ label: isLabelled(day, planning.day, days.length) ? shortLabel(day) : null, fresh, again })),
        'Questions on each day: those met before, and new ones on top',
      ),
      days: days.map(dayRow),
      calendarHref: calendar === null ? null : `/plan/calendar/${calendar}`,
      titleBlock: [field('Candidate', person.displayName, 6, { name: true }), field('As of', dayWords(planning.day), 6)],
    },
  };
}

/** Room for five labels or so: every day of a few, else Mondays, and of many weeks every other one. */
function isLabelled(day: number, first: number, count: number): boolean {
  if (count <= 6) return true;
  const every = Math.ceil(count / 7 / 4);
  return weekdayOf(day) === 1 && Math.floor((day - first + 6) / 7) % every === 0;
}

/** `30 Nov`: the weekday is told by the place. */
const shortLabel = (day: number): string => dayWords(day, 'short').slice(4);

function dayRow({ day, off, fresh, again, minutes }: ForecastDay): PlanPage['data']['days'][number] {
  const none = off ? 'day off' : '0';
  return {
    iso: isoDay(day),
    day: dayWords(day, 'short'),
    fresh: fresh === 0 ? none : String(fresh),
    again: again === 0 ? none : String(again),
    minutes: off ? '' : String(minutes),
  };
}

function words({ planning, days, enough }: PlanView): Pick<PlanPage['data'], 'headline' | 'lead'> {
  const { day, plan, pool } = planning;
  const unseen = pool.filter(({ memory }) => memory === null).length;
  const left = plan.examDay === null ? 0 : plan.examDay - day;
  switch (phaseOf(plan, day)) {
    case 'no-exam':
      return {
        headline: 'Your plan',
        lead: 'No exam is set, so each question comes back a little before it would be forgotten. Say when your exam is, and the plan works towards that day.',
      };
    case 'building':
      return { headline: `${left} days to the exam`, lead: spreadWords(days, unseen, enough) };
    case 'sharpening':
      return {
        headline: left === 1 ? 'The exam is tomorrow' : `${left} days to the exam`,
        lead: `In the last fortnight each day asks what helps most on the day of the exam.${unseen === 0 ? '' : ` ${spreadWords(days, unseen, enough)}`}`,
      };
    case 'exam-day':
      return { headline: 'Today is the exam', lead: 'Nothing new today. Go over a few questions if it calms you, and leave early.' };
    case 'keeping-safe':
      return {
        headline: 'After the exam',
        lead: 'What keeps people safe is still asked now and then, for a year, so that you go on doing it.',
      };
  }
}

/** Whether all will have been met by then, said plainly. */
function spreadWords(days: readonly ForecastDay[], unseen: number, enough: number | null): string {
  if (unseen === 0) return 'You have met every question. Each comes back when it is likely to be forgotten.';
  const met = days.reduce((sum, { fresh }) => sum + fresh, 0);
  const last = days.filter(({ fresh }) => fresh > 0).at(-1);
  const aDay = Math.round(met / Math.max(1, days.filter(({ fresh }) => fresh > 0).length));
  const pace = `${unseen} questions are still unmet: about ${aDay} new ones a day`;
  if (met < unseen)
    return `${pace}, which leaves ${unseen - met} unmet on the day of the exam. ${enough === null ? 'Fewer days off would help; what matters most comes first in any case.' : `With about ${enough} minutes a day you would meet them all.`}`;
  return `${pace} until ${last === undefined ? 'the exam' : dayWords(last.day, 'short')}, and what you have met comes back in between.`;
}
