import { setTimeout as wait } from 'node:timers/promises';
import fc from 'fast-check';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { startJobs, type Job, type Jobs } from '../../src/jobs/index.js';
import { slotOf } from '../../src/jobs/schedule.js';
import { forgetRuns } from '../../src/jobs/store.js';
import { movableClock, testApp, type TestApp } from '../support/app.js';

/** Jobs: each slot of time is run once, whichever and however many servers look. */

let app: TestApp;
beforeAll(async () => {
  app = await testApp();
});
afterAll(() => app.close());

const at = (iso: string): number => Date.parse(iso);
const nightly = (run: () => Promise<string>): Job => ({ name: 'night', every: { dailyAt: '03:10' }, run, failedNote: 'Look again.' });

function server(name: string, job: Job, clock = app.clock, log: unknown[] = []): Jobs {
  return startJobs(
    { db: app.db, clock, jobs: [job], timeZone: 'Europe/London', server: name, log: { warn: (what) => log.push(what) } },
    false,
  );
}

const runs = (job: string) =>
  app.rows<{ outcome: string | null; server: string; note: string }>(
    'SELECT outcome, server, note FROM job_run WHERE job = $1 ORDER BY slot',
    [job],
  );

describe('slots of time', () => {
  it('a nightly one begins at the hour on the club’s own clock, summer and winter', () => {
    // 03:10 in London is 02:10 UTC in summer and 03:10 in winter.
    expect(slotOf({ dailyAt: '03:10' }, at('2026-07-01T02:09:59Z'), 'Europe/London')).toBe(at('2026-06-30T02:10:00Z'));
    expect(slotOf({ dailyAt: '03:10' }, at('2026-07-01T02:10:00Z'), 'Europe/London')).toBe(at('2026-07-01T02:10:00Z'));
    expect(slotOf({ dailyAt: '03:10' }, at('2026-12-01T12:00:00Z'), 'Europe/London')).toBe(at('2026-12-01T03:10:00Z'));
  });

  it('there is one for every day of ten years, never ahead, also on days on which clocks change', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: at('2025-01-01T00:00:00Z'), max: at('2034-12-31T00:00:00Z') }),
        fc.constantFrom('Europe/London', 'America/New_York', 'Europe/Berlin', 'Asia/Kolkata'),
        (now, zone) => {
          const slot = slotOf({ dailyAt: '03:10' }, now, zone);
          expect(slot).toBeLessThanOrEqual(now);
          expect(now - slot).toBeLessThan(25 * 3_600_000);
          expect(slotOf({ dailyAt: '03:10' }, slot, zone)).toBe(slot);
        },
      ),
      { seed: 8, numRuns: 500 },
    );
  });
});

describe('a job', () => {
  it('runs once a night however many servers look, and again the next night', async () => {
    let count = 0;
    const job = nightly(async () => `${(count += 1)}`);
    const servers = ['a', 'b', 'c', 'd'].map((name) => server(name, job));
    app.clock.set('2026-11-26T09:00:00Z');
    for (let look = 0; look < 3; look += 1) await Promise.all(servers.map((one) => one.look()));
    expect(count).toBe(1);
    app.clock.set('2026-11-27T03:10:00Z');
    await Promise.all(servers.map((one) => one.look()));
    expect(count).toBe(2);
    expect((await runs('night')).map(({ outcome, note }) => [outcome, note])).toEqual([
      ['done', '1'],
      ['done', '2'],
    ]);
  });

  it('that fails says what to do, hides the reason from the list, and is tried again after an hour', async () => {
    const log: unknown[] = [];
    let count = 0;
    const job: Job = {
      name: 'failing',
      every: { dailyAt: '03:10' },
      failedNote: 'Make room.',
      run: async () => {
        if ((count += 1) === 1) throw new Error('/secret/path is full');
        return 'well';
      },
    };
    const clock = movableClock('2026-11-26T09:00:00Z');
    const one = server('a', job, clock, log);
    await one.look();
    expect(await runs('failing')).toEqual([{ outcome: 'failed', server: 'a', note: 'Make room.' }]);
    expect(JSON.stringify(log, (_key, value: unknown) => (value instanceof Error ? value.message : value))).toContain(
      '/secret/path is full',
    );
    clock.forward(50 * 60_000);
    expect(await one.look()).toEqual([]);
    clock.forward(20 * 60_000);
    expect(await server('b', job, clock).look()).toEqual(['failing']);
    expect(await runs('failing')).toEqual([{ outcome: 'done', server: 'b', note: 'well' }]);
  });

  it('whose server was killed is taken over by another after two minutes, and not before', async () => {
    const clock = movableClock('2026-11-26T09:00:00Z');
    await app.db.pool.query(
      `INSERT INTO job_run (job, slot, started_at, beat_at, server) VALUES ('killed', '2026-11-26T03:10:00Z', $1, $1, 'dead')`,
      [clock.now()],
    );
    const job: Job = { name: 'killed', every: { dailyAt: '03:10' }, run: async () => 'taken over', failedNote: '' };
    const other = server('alive', job, clock);
    clock.forward(110_000);
    expect(await other.look()).toEqual([]);
    clock.forward(11_000);
    expect(await other.look()).toEqual(['killed']);
    expect(await runs('killed')).toEqual([{ outcome: 'done', server: 'alive', note: 'taken over' }]);
  });

  it('that takes long keeps no other waiting, is not run beside itself, and a stop waits for it', async () => {
    let release: (text: string) => void = () => undefined;
    const long: Job = {
      name: 'long',
      every: { seconds: 1 },
      failedNote: '',
      run: () => new Promise((resolve) => (release = resolve)),
    };
    const short: Job = { name: 'short', every: { seconds: 1 }, failedNote: '', run: async () => 'done' };
    const clock = movableClock('2026-11-26T09:00:00Z');
    const both = startJobs({ db: app.db, clock, jobs: [long, short], timeZone: 'UTC', server: 'a', log: { warn: () => undefined } }, false);
    const first = both.look();
    while ((await runs('short')).length === 0 || (await runs('long')).length === 0) await wait(5);
    clock.forward(5_000);
    expect(await both.look()).toEqual(['short']);
    let stopped = false;
    const stop = both.stop().then(() => (stopped = true));
    await wait(30);
    expect(stopped).toBe(false);
    release('ended');
    await Promise.all([stop, first]);
    expect((await runs('long')).map(({ outcome }) => outcome)).toEqual(['done']);
  });

  it('of which thousands ran leaves a day of lines, and the nights forty days', async () => {
    const now = new Date('2026-11-26T09:00:00Z');
    const add = (job: string, hoursAgo: number) =>
      app.db.pool.query(
        `INSERT INTO job_run (job, slot, started_at, beat_at, finished_at, outcome, server) VALUES ($1, $2, $2, $2, $2, 'done', 'a')`,
        [job, new Date(now.getTime() - hoursAgo * 3_600_000)],
      );
    await add('close-overdue', 25);
    await add('close-overdue', 1);
    await add('backup', 25);
    await add('backup', 24 * 41);
    await forgetRuns(app.db, now);
    expect([(await runs('close-overdue')).length, (await runs('backup')).length]).toEqual([1, 1]);
  });
});
