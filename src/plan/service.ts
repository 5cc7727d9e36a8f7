import { requirePermission, type Person } from '../accounts/index.js';
import { RungwiseError } from '../core/errors.js';
import { memoryModel } from '../core/memory.js';
import { forecast, type ForecastDay } from '../core/plan/forecast.js';
import { keepSafeDays, type PlanSettings } from '../core/plan/settings.js';
import { nameOf, readPlanning, renewCalendar, savePlan, startOf, type Planner, type Planning, type PlanningNeeds } from '../study/index.js';
import { calendarName, calendarOf, readCalendarName } from './calendar.js';
import { findCalendarOwner } from './store.js';

/** A candidate's plan: what they say of the exam, what it means for each day, and the calendar that says so elsewhere. */

export interface PlanView {
  planning: Planning;
  days: ForecastDay[];
  /** Minutes a day that would have every question met in time, where the plan's own do not; null where they do, or an hour would not either. */
  enough: number | null;
  /** The last part of the calendar's address; null before the plan was saved. */
  calendar: string | null;
}

export interface PlanWish extends PlanSettings {
  paper: string | null;
}

/** As far ahead as days are told one by one; further is no more than a guess. */
const mostDays = 120;
const withoutExam = 14;

/** Lengths of a day that are proposed to somebody who has too few minutes. */
const offeredMinutes = [10, 15, 20, 30, 45, 60];

export type PlanService = ReturnType<typeof planService>;

export function planService({ db, clock, questions, secret }: PlanningNeeds & { secret: Uint8Array }) {
  function daysOf(planning: Planning): ForecastDay[] {
    const { day, plan } = planning;
    const ahead = plan.examDay !== null && plan.examDay > day ? plan.examDay - 1 - day : withoutExam - 1;
    return forecast(planning.pool, startOf(planning), day + Math.min(ahead, mostDays - 1), memoryModel()).days;
  }

  /** Tried out, the smallest first. */
  function enoughMinutes(planning: Planning, days: readonly ForecastDay[]): number | null {
    const { plan, pool, day } = planning;
    if (plan.examDay === null || plan.examDay <= day || plan.examDay - day > mostDays) return null;
    const unseen = pool.filter(({ memory }) => memory === null).length;
    const meetsAll = (all: readonly ForecastDay[]): boolean => all.reduce((sum, { fresh }) => sum + fresh, 0) >= unseen;
    if (meetsAll(days)) return null;
    const longer = offeredMinutes.filter((minutes) => minutes > plan.minutes);
    return longer.find((minutes) => meetsAll(daysOf({ ...planning, plan: { ...plan, minutes } }))) ?? null;
  }

  async function view(person: Person): Promise<PlanView> {
    requirePermission(person, 'study');
    const planning = await readPlanning({ db, clock, questions }, person);
    const calendar = planning.saved ? calendarName(secret, person.id, planning.plan.calendarKey) : null;
    const days = daysOf(planning);
    return { planning, days, enough: enoughMinutes(planning, days), calendar };
  }

  /** @returns why a wish cannot be kept, by field; nothing when it was saved */
  async function save(person: Person, wish: PlanWish): Promise<{ exam?: string }> {
    requirePermission(person, 'study');
    const { day, plan, papers } = await readPlanning({ db, clock, questions }, person);
    const why = wish.examDay === plan.examDay ? null : examFault(wish.examDay, day);
    if (why !== null) return { exam: why };
    const paper = papers.some((each) => nameOf(each) === wish.paper) ? wish.paper : null;
    await savePlan(db, person.id, { ...wish, daysOff: wish.daysOff.filter((off) => off >= day), paper }, clock.now());
    return {};
  }

  async function newCalendar(person: Person): Promise<void> {
    requirePermission(person, 'study');
    await renewCalendar(db, person.id);
  }

  /** For a program that is not signed in: the name is the key. */
  async function calendar(name: string): Promise<string> {
    const read = readCalendarName(secret, name);
    const owner: Planner | null = read === null ? null : await findCalendarOwner(db, read.personId, read.calendarKey);
    if (owner === null) throw new RungwiseError('not-found');
    const planning = await readPlanning({ db, clock, questions }, owner);
    const { examDay } = planning.plan;
    const ahead = examDay !== null && examDay >= planning.day ? examDay : null;
    return calendarOf({ id: name.slice(-16, -4), days: daysOf(planning), examDay: ahead, now: clock.now() });
  }

  return { view, save, newCalendar, calendar };
}

function examFault(examDay: number | null, today: number): string | null {
  if (examDay === null) return null;
  if (examDay < today) return 'That day is past. Give the day of your next exam, or leave the box empty.';
  if (examDay > today + 2 * keepSafeDays) return 'That is more than two years away. Leave the box empty until it is nearer.';
  return null;
}
