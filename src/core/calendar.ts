/**
 * The candidate's own calendar. A day is a whole number: days since 1970-01-01 on the calendar of a time zone, so that
 * an answer at half past midnight belongs to the new day wherever the server stands.
 */

const formats = new Map<string, Intl.DateTimeFormat>();

function formatFor(timeZone: string): Intl.DateTimeFormat {
  let format = formats.get(timeZone);
  if (format === undefined) {
    format = new Intl.DateTimeFormat('en-CA', { timeZone, year: 'numeric', month: '2-digit', day: '2-digit' });
    if (formats.size > 1000) formats.clear();
    formats.set(timeZone, format);
  }
  return format;
}

/** True for a time zone name that this machine knows, such as Europe/London. */
export function isTimeZone(text: string): boolean {
  if (text.length === 0 || text.length > 60 || !/^[A-Za-z0-9_+/-]+$/.test(text)) return false;
  try {
    formatFor(text);
    return true;
  } catch {
    return false;
  }
}

/** Day number of a moment (milliseconds since 1970 UTC) in a time zone. */
export function dayNumber(milliseconds: number, timeZone: string): number {
  const [year, month, day] = formatFor(timeZone).format(milliseconds).split('-').map(Number) as [number, number, number];
  return Math.round(Date.UTC(year, month - 1, day) / 86_400_000);
}

/** `2026-11-25` for a day number. */
export function isoDay(day: number): string {
  return new Date(day * 86_400_000).toISOString().slice(0, 10);
}

const months = ['January', 'February', 'March', 'April', 'May', 'June', 'July', 'August', 'September', 'October', 'November', 'December'];
export const weekdays = ['Sunday', 'Monday', 'Tuesday', 'Wednesday', 'Thursday', 'Friday', 'Saturday'];

/** `Wednesday 25 November 2026`, or short: `Wed 25 Nov`. */
export function dayWords(day: number, style: 'long' | 'short' = 'long'): string {
  const [year, month, date] = isoDay(day).split('-').map(Number) as [number, number, number];
  const weekday = weekdays[(((day + 4) % 7) + 7) % 7] as string;
  const name = months[month - 1] as string;
  return style === 'long' ? `${weekday} ${date} ${name} ${year}` : `${weekday.slice(0, 3)} ${date} ${name.slice(0, 3)}`;
}

/** `25 Nov 2026` for an ISO day such as 2026-11-25. */
export function shortDate(iso: string): string {
  const [year, month, date] = iso.split('-').map(Number) as [number, number, number];
  return `${date} ${(months[month - 1] as string).slice(0, 3)} ${year}`;
}

/** When something comes back, said from a day: tomorrow, in 5 days, on a date. */
export function whenWords(day: number, today: number): string {
  const gap = day - today;
  if (gap <= 0) return 'today';
  if (gap === 1) return 'tomorrow';
  if (gap < 7) return `in ${gap} days`;
  return `on ${dayWords(day, 'short')}`;
}
