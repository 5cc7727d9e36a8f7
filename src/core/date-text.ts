/** Days of the calendar and times of day as people type them. */

const isoDate = /^(\d{4})-(\d{2})-(\d{2})$/;
const months = ['jan', 'feb', 'mar', 'apr', 'may', 'jun', 'jul', 'aug', 'sep', 'oct', 'nov', 'dec'];

/** `2026-12-24`, `24 Dec 2026` or `24.12.2026` as a day number; null when it is no date. */
export function readDate(text: string): number | null {
  const trimmed = text.trim();
  const iso = isoDate.exec(trimmed);
  if (iso) return dayOf(Number(iso[1]), Number(iso[2]), Number(iso[3]));
  const words = /^(\d{1,2})(?:st|nd|rd|th)?[ .]+([A-Za-z]{3})[a-z]*[ .]+(\d{4})$/.exec(trimmed);
  if (words) return dayOf(Number(words[3]), months.indexOf((words[2] as string).toLowerCase()) + 1, Number(words[1]));
  const dotted = /^(\d{1,2})\.(\d{1,2})\.(\d{4})$/.exec(trimmed);
  return dotted ? dayOf(Number(dotted[3]), Number(dotted[2]), Number(dotted[1])) : null;
}

function dayOf(year: number, month: number, day: number): number | null {
  const date = new Date(Date.UTC(year, month - 1, day));
  if (date.getUTCFullYear() !== year || date.getUTCMonth() !== month - 1 || date.getUTCDate() !== day) return null;
  return Math.round(date.getTime() / 86_400_000);
}

/** `19:30`, `19.30`, `1930`, `7:30 pm` or `7pm` as `19:30`; null when it is no time of day. */
export function readTime(text: string): string | null {
  const given = /^(\d{1,2})(?:[:.h ]?([0-5]\d))?\s*(?:([ap])\.?m\.?)?$/i.exec(text.trim());
  if (given === null) return null;
  const [, hours, minutes, half] = given;
  const hour = Number(hours);
  if (half === undefined) return minutes === undefined || hour > 23 ? null : `${two(hour)}:${minutes}`;
  if (hour < 1 || hour > 12) return null;
  return `${two((hour % 12) + (half.toLowerCase() === 'p' ? 12 : 0))}:${minutes ?? '00'}`;
}

const two = (number: number): string => String(number).padStart(2, '0');
