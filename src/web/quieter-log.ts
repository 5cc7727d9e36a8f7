import type { Clock } from '../platform/clock.js';
import { isDatabaseAway, isDiskFull } from '../platform/db.js';

/**
 * A database that is away, or a full disk, is met by every request, every look for changes and every job alike. The log tells it once a
 * minute, with how often it was met since; everything else is told each time.
 */

const minute = 60_000;

type Method = (this: unknown, ...args: unknown[]) => void;

/** The `hooks` of the logger. A line is known by what it holds under `err`. */
export function quieter(clock: Clock): { logMethod(this: unknown, args: unknown[], method: unknown): void } {
  const told = new Map<string, { at: number; unsaid: number }>();
  return {
    logMethod(args, method) {
      const say = (line: unknown[]): void => (method as Method).apply(this, line);
      const kind = kindOf(args[0]);
      if (kind === null) return say(args);
      const now = clock.now().getTime();
      const last = told.get(kind);
      if (last !== undefined && now >= last.at && now - last.at < minute) return void (last.unsaid += 1);
      told.set(kind, { at: now, unsaid: 0 });
      say(last === undefined ? args : [{ ...(args[0] as object), unsaid: last.unsaid }, ...args.slice(1)]);
    },
  };
}

function kindOf(first: unknown): string | null {
  const { err } = (typeof first === 'object' && first !== null ? first : {}) as { err?: unknown };
  if (err === undefined) return null;
  if (isDiskFull(err)) return 'disk full';
  return isDatabaseAway(err) ? 'database away' : null;
}
