/**
 * Names of the files of backups, and which of them stay: the latest of each of the last 7 days, 4 weeks and 3 months that have
 * one, and all of the last 48 hours, since whoever takes one after a mishap must not lose the one from before it. And of those taken
 * before a change: the latest before each of the last 5 changes, where each restore is a change of its own. Times are UTC. None stays that is more
 * than 100 days older than the newest nightly one: people are told that what they removed is gone from backups after three months or so.
 */

/** Beside the backups: marks of people who were removed, so that none comes back with an older one. */
export const removedName = 'removed-people.txt';

const kept = { days: 7, weeks: 4, months: 3, changes: 5, recent: 2, oldest: 100 };
const dayMs = 86_400_000;

/** `2026-11-28-0230` */
const stamp = (time: Date): string => `${time.toISOString().slice(0, 10)}-${time.toISOString().slice(11, 16).replace(':', '')}`;

/** @returns `rungwise-2026-11-28-0230.backup` */
export const nightlyName = (time: Date): string => `rungwise-${stamp(time)}.backup`;

/** @param what a migration's name, or `restore`. @returns `before-0010_trust-2026-11-28-0230.backup` */
export const beforeName = (what: string, time: Date): string => `before-${what}-${stamp(time)}.backup`;

interface Dated {
  name: string;
  /** Milliseconds since 1970. */
  time: number;
  /** What it was taken before; null for a nightly one. */
  before: string | null;
}

/** @returns null for every name that neither of the two above would write */
function dated(name: string): Dated | null {
  const [, nightly, change, day = '', hour = '', minute = ''] =
    /^(?:(rungwise)|before-([a-z0-9_]+))-(\d{4}-\d\d-\d\d)-(\d\d)(\d\d)\.backup$/.exec(name) ?? [];
  const time = Date.parse(`${day}T${hour}:${minute}:00Z`);
  // A day such as 31 February is read as one of March, and is none of ours.
  if (Number.isNaN(time) || !new Date(time).toISOString().startsWith(`${day}T${hour}:${minute}`)) return null;
  return { name, time, before: nightly === undefined ? (change ?? null) : null };
}

/** The latest file of each of the last so many stretches of time, or changes, that have one. @param files the latest first */
function latestOfEach(files: readonly Dated[], keyOf: (file: Dated) => string | number, most: number): string[] {
  const seen = new Map<string | number, string>();
  for (const file of files) if (!seen.has(keyOf(file))) seen.set(keyOf(file), file.name);
  return [...seen.values()].slice(0, most);
}

/** @param names all that lies in the folder. @returns those of our own names whose time is up */
export function outOfRotation(names: readonly string[]): string[] {
  const ours = names.map(dated).filter((file) => file !== null);
  ours.sort((a, b) => b.time - a.time || (a.name < b.name ? 1 : -1));
  const nightly = ours.filter(({ before }) => before === null);
  const changes = ours.filter(({ before }) => before !== null);
  // 1970 began on a Thursday: weeks are cut on Mondays.
  const week = ({ time }: Dated): number => Math.floor((time / dayMs + 3) / 7);
  const stay = new Set([
    ...latestOfEach(nightly, ({ time }) => Math.floor(time / dayMs), kept.days),
    ...latestOfEach(nightly, week, kept.weeks),
    ...latestOfEach(nightly, ({ time }) => new Date(time).toISOString().slice(0, 7), kept.months),
    ...latestOfEach(changes, ({ before, name }) => (before === 'restore' ? name : (before ?? '')), kept.changes),
    ...ours.filter(({ time }) => time > (ours[0]?.time ?? 0) - kept.recent * dayMs).map(({ name }) => name),
  ]);
  const oldest = (nightly[0]?.time ?? 0) - kept.oldest * dayMs;
  return ours.filter(({ name, time }) => !stay.has(name) || time < oldest).map(({ name }) => name);
}
