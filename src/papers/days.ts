import { dayNumber } from '../core/calendar.js';

/** The day of a moment in somebody's own calendar. */
export const dayOf = (at: Date, person: { timeZone: string }): number => dayNumber(at.getTime(), person.timeZone);
