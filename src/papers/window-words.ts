import { dayWords } from '../core/calendar.js';
import { localText } from '../core/local-time.js';
import { dayOf } from './days.js';
import type { PaperHead } from './rows.js';

/** When a paper can be sat, in words. */

type Wall = { timeZone: string };

const clock = (at: Date, person: Wall): string =>
  `${dayWords(dayOf(at, person), 'short')}, ${localText(at.getTime(), person.timeZone).slice(11)}`;

export function windowWords({ opensAt, closesAt }: PaperHead, now: Date, person: Wall): string {
  if (opensAt === null || closesAt === null) return 'on paper only';
  if (now < opensAt) return `opens ${clock(opensAt, person)}, closes ${clock(closesAt, person)}`;
  return now < closesAt ? `open until ${clock(closesAt, person)}` : `closed ${clock(closesAt, person)}`;
}
