/** What a candidate has said of the time there is: when the exam is, how long a day, and which days are off. */

export interface PlanSettings {
  /** Day number of the exam, which is sat in the morning; null for none. */
  examDay: number | null;
  /** Minutes of study a day, 1 to 180. */
  minutes: number;
  /** 0 for Sunday to 6 for Saturday. */
  weekdaysOff: readonly number[];
  /** Single days off, as day numbers. */
  daysOff: readonly number[];
}

/** Until somebody has said otherwise: no exam, ten minutes every day. */
export const plainSettings: PlanSettings = { examDay: null, minutes: 10, weekdaysOff: [], daysOff: [] };

/** How long after an exam what matters most is still asked now and then. */
export const keepSafeDays = 365;

export type Phase =
  /** No exam is known, or one that lies more than a year back. */
  | 'no-exam'
  /** The weeks in which what is new is spread out. */
  | 'building'
  /** The last fortnight, in which the gain on the exam day decides. */
  | 'sharpening'
  | 'exam-day'
  /** The year after. */
  | 'keeping-safe';

/** Length of the last stretch (scheduling study, policy C3). */
export const sharpeningDays = 14;

export function phaseOf({ examDay }: PlanSettings, today: number): Phase {
  if (examDay === null || today > examDay + keepSafeDays) return 'no-exam';
  if (today > examDay) return 'keeping-safe';
  if (today === examDay) return 'exam-day';
  return examDay - today <= sharpeningDays ? 'sharpening' : 'building';
}

/** Day 0, 1 January 1970, was a Thursday. */
export const weekdayOf = (day: number): number => (((day + 4) % 7) + 7) % 7;

export function isDayOff({ weekdaysOff, daysOff }: PlanSettings, day: number): boolean {
  return weekdaysOff.includes(weekdayOf(day)) || daysOff.includes(day);
}

/** The day itself, or the first after it that is not off; the day itself again where every day of a year is off. */
export function nextStudyDay(settings: PlanSettings, day: number): number {
  for (let ahead = 0; ahead <= keepSafeDays; ahead += 1) if (!isDayOff(settings, day + ahead)) return day + ahead;
  return day;
}

/** Days of study from today to the day before the exam, both counted; at least 1, since whoever asks is here today. */
export function studyDaysLeft(settings: PlanSettings, today: number): number {
  if (settings.examDay === null || phaseOf(settings, today) === 'no-exam') return Infinity;
  let count = isDayOff(settings, today) ? 1 : 0;
  for (let day = today; day < settings.examDay; day += 1) if (!isDayOff(settings, day)) count += 1;
  return Math.max(1, count);
}
