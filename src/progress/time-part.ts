import { dayWords } from '../core/calendar.js';
import { dayBars } from '../core/charts/day-bars.js';
import { weekdayOf } from '../core/plan/settings.js';
import { counted } from '../core/words.js';
import type { ProgressPage } from './page-types.js';
import type { DayRow } from './store.js';

/** The last four weeks, today at the end. */
const shownDays = 28;

export function timePart(time: readonly DayRow[], today: number): Pick<ProgressPage['data'], 'time' | 'timeChart' | 'timeRows'> {
  if (time.length === 0) return { time: 'Nothing yet: time is counted from your answers.', timeChart: null, timeRows: [] };
  const by = new Map(time.map((row) => [row.day, row]));
  const days = Array.from({ length: shownDays }, (_, index) => today - shownDays + 1 + index);
  const bars = days.map((day) => ({
    label: weekdayOf(day) === 1 ? dayWords(day, 'short').slice(4) : null,
    again: Math.round((by.get(day)?.seconds ?? 0) / 60),
    fresh: 0,
  }));
  return {
    time: `About ${spanWords(sum(time))} on ${counted(time.length, 'day')} in all, as far as the times of your answers tell.`,
    timeChart: dayBars(bars, 'Minutes of study on each of the last 28 days'),
    timeRows: [0, 7, 14, 21].map((from) => {
      const week = days.slice(from, from + 7);
      const rows = week.flatMap((day) => by.get(day) ?? []);
      return {
        week: `${dayWords(week[0] ?? today, 'short')} to ${dayWords(week[6] ?? today, 'short')}`,
        minutes: String(Math.round(sum(rows) / 60)),
        answers: String(rows.reduce((all, { answers }) => all + answers, 0)),
      };
    }),
  };
}

const sum = (rows: readonly DayRow[]): number => rows.reduce((all, { seconds }) => all + seconds, 0);

/** `40 minutes`, `3 hours 5 minutes`. */
function spanWords(seconds: number): string {
  const minutes = Math.max(1, Math.round(seconds / 60));
  const [hours, rest] = [Math.floor(minutes / 60), minutes % 60];
  return [...(hours > 0 ? [counted(hours, 'hour')] : []), ...(rest > 0 ? [counted(rest, 'minute')] : [])].join(' ');
}
