/** Moments as a clock on somebody's wall shows them, for the boxes of forms: `2026-11-26T19:30`. */

const partsOf = new Map<string, Intl.DateTimeFormat>();

function formatFor(timeZone: string): Intl.DateTimeFormat {
  let format = partsOf.get(timeZone);
  if (format === undefined) {
    const two = '2-digit' as const;
    format = new Intl.DateTimeFormat('en-GB', {
      timeZone,
      year: 'numeric',
      month: two,
      day: two,
      hour: two,
      minute: two,
      hourCycle: 'h23',
    });
    if (partsOf.size > 1000) partsOf.clear();
    partsOf.set(timeZone, format);
  }
  return format;
}

/** What a moment (milliseconds since 1970 UTC) is called there. */
export function localText(milliseconds: number, timeZone: string): string {
  const parts = Object.fromEntries(
    formatFor(timeZone)
      .formatToParts(milliseconds)
      .map(({ type, value }) => [type, value]),
  );
  return `${parts['year']}-${parts['month']}-${parts['day']}T${parts['hour']}:${parts['minute']}`;
}

const asUtc = (text: string): number => Date.parse(`${text}:00Z`);

/**
 * The moment that is called so there; null when the text is no time, or is skipped there as clocks go forward. Of two moments with one
 * name, as clocks go back, it is the first.
 */
export function readLocal(text: string, timeZone: string): number | null {
  const given = /^(\d{4}-\d{2}-\d{2})[T ](\d{2}:\d{2})(?::\d{2})?$/.exec(text.trim());
  if (given === null) return null;
  const wanted = `${given[1]}T${given[2]}`;
  const utc = asUtc(wanted);
  if (Number.isNaN(utc)) return null;
  // A zone's offset lies within 14 hours either way and changes by whole quarters of an hour: those around are tried, the earliest first.
  const offsets = [-24, 0, 24].map((hours) => {
    const at = utc + hours * 3_600_000;
    return asUtc(localText(at, timeZone)) - at;
  });
  const moments = [...new Set(offsets)].map((offset) => utc - offset).filter((moment) => localText(moment, timeZone) === wanted);
  return moments.length === 0 ? null : Math.min(...moments);
}
