import { afterAll, beforeAll, describe, expect, it, vi } from 'vitest';
import { run as replay } from '../../src/cli/replay.js';
import { answer, isNumber, rightFields, wrongFields } from '../support/answering.js';
import { testApp, type TestApp } from '../support/app.js';

/** The record of answers must make the memories that are kept, whatever was answered and in whatever order. */

let app: TestApp;
beforeAll(async () => {
  app = await testApp();
  vi.stubEnv('DATABASE_URL', app.url);
});
afterAll(async () => {
  vi.unstubAllEnvs();
  await app.close();
});

async function call(...args: string[]): Promise<{ status: number; out: string; err: string }> {
  const [out, err]: [string[], string[]] = [[], []];
  const status = await replay(args, { out: (text) => void out.push(text), err: (text) => void err.push(text) });
  return { status, out: out.join('\n'), err: err.join('\n') };
}

describe('rungwise replay --verify', () => {
  it('finds no difference after days of right, wrong, guessed and repeated answers', async () => {
    const visitor = app.visitor();
    await visitor.start('Odo');
    for (let day = 0; day < 3; day += 1) {
      const round = await visitor.round('20');
      let count = 0;
      for (let page = await visitor.get(round); page.status === 200; page = await visitor.get(round)) {
        const fields = count % 3 === 0 ? wrongFields(page) : isNumber(page) && count % 2 === 0 ? { value: '' } : rightFields(page);
        await answer(visitor, page, fields, fields['value'] === '' ? 'unknown' : count % 4 === 1 ? 'guessing' : 'sure');
        count += 1;
      }
      app.clock.forward(2 * 86_400_000);
    }
    const { status, out } = await call('--verify', '--json');
    const report = JSON.parse(out) as { people: number; answers: number; memories: number; differences: unknown[] };
    expect([status, report.people, report.memories, report.differences]).toEqual([0, 1, 8, []]);
    expect(report.answers).toBeGreaterThan(20);
  });

  it('names person and question when a memory is not what the answers make', async () => {
    await app.rows('UPDATE memory SET stability = stability + 0.001 WHERE question_id = (SELECT min(question_id) FROM memory)');
    const { status, out } = await call('--verify');
    expect(status).toBe(1);
    expect(out).toMatch(/1 differences?\.\n {2}person \d+, [\w-]+: stability .* is kept, and the answers make stability/);
  });

  it('says how it is used when it is misused', async () => {
    for (const args of [[], ['--rebuild'], ['x', '--verify']]) expect((await call(...args)).status).toBe(2);
  });
});
