/** Where the program gets the time from. Everything that asks for the time is handed one of these. */
export interface Clock {
  /** This moment. */
  now(): Date;
}

export const systemClock: Clock = { now: () => new Date() };

/**
 * A clock that runs as fast as the system's but shows another time: for tests ("the next day") and demonstrations.
 * @param milliseconds how far ahead of the system's clock it is; negative: behind
 */
export function shiftedClock(milliseconds: number): Clock {
  return { now: () => new Date(Date.now() + milliseconds) };
}
