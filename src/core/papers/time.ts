/** The time of a sitting. All of it is the server's: what a candidate's own clock says is never asked. */

const minute = 60_000;

/**
 * When a sitting that starts now is over, in milliseconds since 1970.
 * @param extraTime per cent
 * @param closesAt a class paper's end, which ends every sitting; null for none
 */
export function deadlineOf(startedAt: number, minutes: number, extraTime: number, closesAt: number | null): number {
  const own = startedAt + Math.round(minutes * (1 + extraTime / 100) * minute);
  return closesAt === null ? own : Math.min(own, closesAt);
}

export interface SittingTimes {
  startedAt: Date | null;
  deadlineAt: Date | null;
  handedInAt: Date | null;
}

/** `over`: the time ran out, and what was saved counts. */
export type SittingState = 'waiting' | 'running' | 'over' | 'handed-in';

/** What is saved at the deadline itself still counts; a moment later nothing does. */
export function stateOf({ startedAt, deadlineAt, handedInAt }: SittingTimes, now: number): SittingState {
  if (handedInAt !== null) return 'handed-in';
  if (startedAt === null || deadlineAt === null) return 'waiting';
  return now <= deadlineAt.getTime() ? 'running' : 'over';
}

/** Whole minutes left, rounded up, so that it never says less than there is. */
export const minutesLeft = (deadlineAt: Date, now: number): number => Math.max(0, Math.ceil((deadlineAt.getTime() - now) / minute));
