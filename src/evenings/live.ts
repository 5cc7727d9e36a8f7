import type { Clock } from '../platform/clock.js';
import type { Db } from '../platform/db.js';
import { changesOf, sessionsThatMay, type ChangeRow } from './live-store.js';

/**
 * Who listens to which evening, and what they are told: that something changed, never what. While anybody listens, one query a second asks
 * for the changes of all evenings that are listened to. That serves any number of servers and listeners with no connection of its own that
 * could break, and counts the choices on phones besides, which would otherwise be a message each.
 */

export interface Listener {
  eveningId: string;
  personId: number;
  sessionHash: Buffer;
  /** Whether it is told how many have answered: a tutor's page, not a candidate's. */
  counts: boolean;
  send(text: string): void;
  end(): void;
}

export interface LiveNeeds {
  db: Db;
  clock: Clock;
  /** Gets a line when changes could not be read; that is no reason to stop. */
  log: (error: unknown) => void;
}

const pollMilliseconds = 1000;
const beatMilliseconds = 20_000;
/** Every third beat, so once a minute, everybody's right to listen is looked at again. */
const beatsToRecheck = 3;
const mostOfOne = 4;
const mostOfAll = 500;

/** What a page shows, as the stream tells it: the number of the change and, for a tutor, how many have answered. */
export const seenText = (change: number, answered: number | null): string => (answered === null ? String(change) : `${change} ${answered}`);

export class LiveEvenings {
  private readonly listeners = new Map<Listener, { told: string | null; checkedAt: number | null }>();
  private timer: NodeJS.Timeout | undefined;
  private beat: NodeJS.Timeout | undefined;
  private beats = 0;
  private polling: Promise<void> | null = null;
  private again = false;
  private closed = false;

  constructor(private readonly needs: LiveNeeds) {}

  /** @returns false when this person, or everybody together, has too many streams: the page then looks again by itself */
  listen(listener: Listener): boolean {
    const own = [...this.listeners.keys()].filter(({ personId }) => personId === listener.personId).length;
    if (this.closed || own >= mostOfOne || this.listeners.size >= mostOfAll) return false;
    this.listeners.set(listener, { told: null, checkedAt: null });
    this.beat ??= setInterval(() => this.beatAll(), beatMilliseconds);
    this.nudge();
    return true;
  }

  leave(listener: Listener): void {
    this.listeners.delete(listener);
    if (this.listeners.size > 0) return;
    clearTimeout(this.timer);
    clearInterval(this.beat);
    this.beat = undefined;
  }

  /** Looks for changes now and not in a second: after a step on this server. */
  nudge(): void {
    if (this.closed || this.listeners.size === 0) return;
    if (this.polling !== null) this.again = true;
    else this.poll();
  }

  /** Ends all streams, and waits for what is under way. */
  async close(): Promise<void> {
    this.closed = true;
    for (const listener of [...this.listeners.keys()]) this.end(listener);
    clearTimeout(this.timer);
    clearInterval(this.beat);
    await this.polling;
  }

  private end(listener: Listener): void {
    this.leave(listener);
    listener.end();
  }

  private beatAll(): void {
    this.beats += 1;
    for (const [listener, state] of this.listeners) {
      listener.send(':\n\n');
      if (this.beats % beatsToRecheck === 0) state.checkedAt = null;
    }
  }

  private poll(): void {
    clearTimeout(this.timer);
    this.again = false;
    this.polling = this.look()
      .catch(this.needs.log)
      .then(() => {
        this.polling = null;
        if (this.closed || this.listeners.size === 0) return;
        if (this.again) return this.poll();
        this.timer = setTimeout(() => this.poll(), pollMilliseconds);
      });
  }

  private async look(): Promise<void> {
    const ids = [...new Set([...this.listeners.keys()].map(({ eveningId }) => eveningId))];
    const rows = new Map((await changesOf(this.needs.db, ids)).map((row) => [row.eveningId, row]));
    for (const id of ids) await this.tell(id, rows.get(id));
  }

  /** Whoever may not listen any more is told nothing, and the stream ends; so it does with the evening, after a last word. */
  private async tell(eveningId: string, row: ChangeRow | undefined): Promise<void> {
    const here = [...this.listeners].filter(([listener]) => listener.eveningId === eveningId);
    if (row === undefined) return here.forEach(([listener]) => this.end(listener));
    const due = here.filter(([, state]) => state.checkedAt !== row.change);
    if (due.length > 0) await this.check(eveningId, row.change, due);
    for (const [listener, state] of here) {
      if (!this.listeners.has(listener)) continue;
      const text = seenText(row.change, listener.counts ? row.answered : null);
      if (state.told !== text) listener.send(`data: ${text}\n\n`);
      state.told = text;
      if (row.ended) this.end(listener);
    }
  }

  private async check(eveningId: string, change: number, due: readonly [Listener, { checkedAt: number | null }][]): Promise<void> {
    const sessions = due.map(([listener]) => listener.sessionHash);
    const may = await sessionsThatMay(this.needs.db, eveningId, sessions, this.needs.clock.now());
    for (const [listener, state] of due) {
      if (may.has(listener.sessionHash.toString('hex'))) state.checkedAt = change;
      else this.end(listener);
    }
  }
}
