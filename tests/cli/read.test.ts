import { mkdtemp, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { run } from '../../src/cli/read.js';

let folder: string;
beforeAll(async () => {
  folder = await mkdtemp(join(tmpdir(), 'read-'));
});
afterAll(() => rm(folder, { recursive: true }));

async function said(...args: string[]): Promise<{ status: number; out: string; err: string }> {
  let out = '';
  let err = '';
  const status = await run(args, { out: (text) => void (out += text), err: (text) => void (err += text) });
  return { status, out, err };
}
async function batch(content: string): Promise<string> {
  const file = join(folder, 'batch.json');
  await writeFile(file, content);
  return file;
}

describe('the command read', () => {
  it('prints value, unit and SI value, and nothing else, with status 0', async () => {
    const { status, out, err } = await said('--expect', 'kW', '--json', '--', '500 W');
    expect([status, err, JSON.parse(out)]).toEqual([0, '', { understood: true, value: 0.5, unit: 'kW', si: 500 }]);
  });

  it('prints reason and message with status 1 when the text is not understood', async () => {
    const { status, out, err } = await said('--expect', 'A', '--json', '--', '5 bananas');
    expect([status, err]).toEqual([1, '']);
    expect(JSON.parse(out)).toEqual({ understood: false, reason: 'wrong-kind', message: expect.stringContaining('bananas') });
  });

  it('takes a text that starts with a minus sign, and an empty one, after the two dashes', async () => {
    expect(JSON.parse((await said('--expect', '°C', '--json', '--', '-5')).out)).toMatchObject({ value: -5 });
    expect(JSON.parse((await said('--expect', 'A', '--json', '--', '')).out)).toMatchObject({ understood: false, reason: 'empty' });
  });

  it('takes a plain number when the unit is empty', async () => {
    expect(JSON.parse((await said('--expect', '', '--json', '--', '50 %')).out)).toEqual({
      understood: true,
      value: 0.5,
      unit: '',
      si: 0.5,
    });
  });

  it('says it in words without --json', async () => {
    expect((await said('--expect', 'W', '--', '0.5 kW')).out).toBe('read as 0.5\u202fkW = 500\u202fW');
  });

  it('reads a batch into one result for each, in order, with status 0', async () => {
    const file = await batch('[{ "text": "2k2", "expect": "ohm" }, { "text": "", "expect": "A" }, { "text": "1", "expect": "furlong" }]');
    const { status, out, err } = await said('--batch', file, '--json');
    const results = JSON.parse(out) as { reason?: string }[];
    expect([status, results[0], results[1]?.reason, results[2]?.reason]).toEqual([
      0,
      { understood: true, value: 2200, unit: 'ohm', si: 2200 },
      'empty',
      'wrong-kind',
    ]);
    expect(err).toContain('entry 3: there is no unit "furlong"');
  });

  it.each([
    [['--json', '--', '5'], /--expect is missing/],
    [['--expect', 'furlong', '--json', '--', '5'], /no unit "furlong"/],
    [['--expect', 'W', '--json'], /the text is missing/],
    [['--colour', 'red'], /--colour/],
    [['--batch', 'no-such-file.json', '--json'], /no-such-file\.json: /],
    [['--batch', 'x.json', '--expect', 'W'], /with --batch/],
  ])('answers 2 with the reason, and prints nothing, for %j', async (args, message) => {
    const { status, out, err } = await said(...args);
    expect([status, out]).toEqual([2, '']);
    expect(err).toMatch(message);
  });

  it.each([
    ['{', /batch\.json: /],
    ['{}', /must hold an array/],
    ['[{ "expect": "W" }]', /entry 1: "text"/],
    ['[{ "text": "5", "expect": "W" }, { "text": "5" }]', /entry 2: "expect"/],
    ['[null]', /entry 1: "text"/],
  ])('names the place in a batch that cannot be used: %s', async (content, message) => {
    const { status, out, err } = await said('--batch', await batch(content), '--json');
    expect([status, out]).toEqual([2, '']);
    expect(err).toMatch(message);
  });
});
