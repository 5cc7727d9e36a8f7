import { describe, expect, it } from 'vitest';
import { run } from '../../src/cli/draw.js';

async function rungwise(...args: string[]): Promise<{ status: number; out: string; err: string }> {
  const out: string[] = [];
  const err: string[] = [];
  const status = await run(args, { out: (text) => out.push(text), err: (text) => err.push(text) });
  return { status, out: out.join('\n'), err: err.join('\n') };
}

interface Drawn {
  family: string;
  seed: number;
  region: string;
  stem: string;
  inputs: Record<string, { value: number; unit: string }>;
  key: { value: number; shown: number; unit: string; acceptFrom: number; acceptTo: number };
  working: string[];
  tellTales: { name: string; label: string; value: number; unit: string }[];
  options: { value: number; text: string }[] | null;
  caution: string;
}

describe('rungwise draw', () => {
  it('prints one draw as one JSON document, with the numbers as numbers', async () => {
    const { status, out, err } = await rungwise('nf-ladder-base', '--seed', '7', '--json');
    expect([status, err]).toEqual([0, '']);
    const drawn = JSON.parse(out) as Drawn;
    expect(drawn).toMatchObject({ family: 'nf-ladder-base', seed: 7, region: 'uk', key: { unit: 'm' } });
    // A number is put with four options on paper: the key and three of the mistakes.
    expect(drawn.options?.filter(({ value }) => value === drawn.key.shown)).toHaveLength(1);
    expect(drawn.options).toHaveLength(4);
    const height = drawn.inputs['H']?.value ?? NaN;
    expect(drawn.inputs['H']?.unit).toBe('m');
    expect(drawn.stem).toContain(`${height} m`);
    // One out to four up, accepted from 4 % below to 7.5 % above, or 3 cm where that is more.
    expect(drawn.key.value).toBeCloseTo(height / 4, 9);
    expect(drawn.key.acceptFrom).toBeCloseTo(height / 4 - Math.max(0.03, 0.01 * height), 9);
    expect(drawn.key.acceptTo).toBeCloseTo(height / 4 + Math.max(0.03, 0.01875 * height), 9);
    expect(drawn.working[0]).toBe('One unit out for every four up.');
    expect(drawn.tellTales.find(({ name }) => name === 'one-in-three')?.value).toBeCloseTo(height / 3, 9);
    expect(drawn.caution).toMatch(/ladder maker's instructions/);
  });

  it('prints a list for --count, each with its own seed, and each the same as by itself', async () => {
    const { out } = await rungwise('nf-plug-fuse-choice', '--seed', '40', '--count', '3', '--region', 'eu', '--json');
    const draws = JSON.parse(out) as Drawn[];
    expect(draws.map(({ seed }) => seed)).toEqual([40, 41, 42]);
    expect(draws[1]?.options?.map(({ value }) => value)).toEqual([6, 10, 13, 16]);
    const alone = await rungwise('nf-plug-fuse-choice', '--seed', '41', '--region', 'eu', '--json');
    expect(JSON.parse(alone.out)).toEqual(draws[1]);
    const listOfOne = await rungwise('nf-plug-fuse-choice', '--count', '1', '--json');
    expect(JSON.parse(listOfOne.out)).toHaveLength(1);
  });

  it('without --json prints the question, the answer, the working and the caution to read', async () => {
    const { status, out } = await rungwise('nf-body-current', '--seed', '3', '--region', 'na');
    expect(status).toBe(0);
    for (const part of [
      'nf-body-current, seed 3, region na',
      '120 V',
      'Answer: ',
      'Working:',
      'Wrong answers that tell why:',
      'Never touch anyone',
    ])
      expect(out).toContain(part);
  });

  it.each([
    [[], /give the name of one family/],
    [['nf-ladder-base', 'nf-ladder-base'], /give the name of one family/],
    [['nf-ladder-bse'], /no family "nf-ladder-bse".*did you mean nf-ladder-base\?/],
    [['nothing-like-it'], /no family "nothing-like-it".*there are .*nf-ladder-base/],
    [['constructor'], /no family "constructor"/],
    [['nf-ladder-base', '--seed', 'x'], /--seed "x" is not a whole number/],
    [['nf-ladder-base', '--seed=-1'], /--seed "-1" is not a whole number/],
    [['nf-ladder-base', '--seed', '1.5'], /--seed "1\.5" is not a whole number/],
    [['nf-ladder-base', '--count', '0'], /--count "0" is not a whole number from 1 to 1000/],
    [['nf-ladder-base', '--count', '1001'], /--count "1001"/],
    [['nf-ladder-base', '--region', 'moon'], /--region "moon" is not a region: give uk, eu, na/],
    [['nf-ladder-base', '--colour', 'red'], /--colour/],
    [['nf-ladder-base', '--pack', 'question-packs/no-such-pack'], /the pack "question-packs\/no-such-pack" cannot be used/],
  ])('with %j says what is wrong, on the error side only, and exits with 2', async (args, message) => {
    const { status, out, err } = await rungwise(...args, '--json');
    expect([status, out]).toEqual([2, '']);
    expect(err).toMatch(message);
    expect(err).toMatch(/npx rungwise draw <family>/);
    expect(err).not.toMatch(/\n\s+at /);
  });
});
