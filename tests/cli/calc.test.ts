import { describe, expect, it } from 'vitest';
import { run } from '../../src/cli/calc.js';

async function said(...args: string[]): Promise<{ status: number; out: string; err: string }> {
  let out = '';
  let err = '';
  const status = await run(args, { out: (text) => void (out += text), err: (text) => void (err += text) });
  return { status, out, err };
}

describe('the command calc', () => {
  it('lists every calculation with its inputs, outputs, source and caution', async () => {
    const { status, out, err } = await said('--list', '--json');
    const list = JSON.parse(out) as Record<string, unknown>[];
    expect([status, err, list.length > 25]).toEqual([0, '', true]);
    for (const one of list) expect(Object.keys(one)).toEqual(['id', 'title', 'inputs', 'outputs', 'source', 'validity', 'rule', 'caution']);
    expect(list.find(({ id }) => id === 'fuse-from-power')).toMatchObject({
      inputs: [
        { name: 'power', kind: 'quantity', unit: 'W', min: 0, max: 1e6, choices: null, optional: false },
        { name: 'voltage', kind: 'quantity', unit: 'V', min: 1, max: 1e6, choices: null, optional: true },
        { name: 'series', kind: 'list', unit: 'A', min: 0.01, max: 1e4, choices: null, optional: true },
      ],
      outputs: [
        { name: 'fuse', unit: 'A' },
        { name: 'current', unit: 'A' },
      ],
    });
  });

  it('takes inputs as a person types them', async () => {
    const { status, out, err } = await said('current-from-power', 'power=2.3kW', 'voltage=230', '--json');
    // 2300 W / 230 V = 10 A.
    expect([status, err, JSON.parse(out)]).toEqual([
      0,
      '',
      {
        id: 'current-from-power',
        region: 'uk',
        inputs: { power: { value: 2300, unit: 'W' }, voltage: { value: 230, unit: 'V' } },
        result: { current: { value: 10, unit: 'A' } },
        working: expect.arrayContaining(['I = 10\u202fA']),
        source: expect.arrayContaining([expect.objectContaining({ publisher: 'BIPM' })]),
        caution: expect.stringContaining('never a design approval'),
      },
    ]);
  });

  it('takes what is left out from the region', async () => {
    const { out } = await said('current-from-power', 'power=1200', '--region', 'na', '--json');
    // 1200 W / 120 V = 10 A.
    expect(JSON.parse(out)).toMatchObject({ region: 'na', inputs: { voltage: { value: 120 } }, result: { current: { value: 10 } } });
  });

  it('takes lists parted by semicolons and choices in any capitals', async () => {
    const lead = await said('extension-lead-load', 'loads=1 kW; 500 W; 800', '--json');
    expect(JSON.parse(lead.out)).toMatchObject({ inputs: { loads: { value: [1000, 500, 800] } }, result: { power: { value: 2300 } } });
    const storm = await said('lightning-distance', 'time=10 s', 'rule=5 S TO THE MILE', '--json');
    // 10 s at five seconds to the mile: 2 miles, 3.218688 km.
    expect((JSON.parse(storm.out) as { result: { distance: { value: number } } }).result.distance.value).toBeCloseTo(3.218688, 9);
  });

  it('takes a gain typed in plain decibels and a level below nought', async () => {
    // 10 W × 10^0.6 = 39.81 W.
    expect(
      (JSON.parse((await said('eirp', 'power=10 W', 'gain=6 dB', '--json')).out) as { result: { eirp: { value: number } } }).result.eirp
        .value,
    ).toBeCloseTo(39.81, 2);
    expect(JSON.parse((await said('watts-from-dbm', 'level=-30 dBm', '--json')).out)).toMatchObject({
      result: { power: { value: 0.000001 } },
    });
  });

  it('prints the working in words without --json', async () => {
    const { out } = await said('ladder-base', 'height=6 m');
    expect(out).toContain('b = 6\u202fm / 4');
    expect(out).toContain('base = 1.5\u202fm');
    expect(out).toContain('never a design approval');
  });

  it.each([
    [['current-from-power', 'voltage=230'], /power: is missing/],
    [['current-from-power', 'power=-5'], /power: .*out of range/],
    [['current-from-power', 'power=5 A'], /power: .*is a current/],
    [['current-from-power', 'power=much'], /power: There is no number/],
    [['current-from-power', 'power=1,234'], /power: .*1234 or as 1\.234/],
    [['current-from-power', 'power=5', 'colour=red'], /colour: there is no such input/],
    [['current-from-power', 'power=5', 'power=6'], /power: is given twice/],
    [['current-from-power', 'power'], /"power" is not an input/],
    [['current-from-power', '__proto__=5'], /__proto__: there is no such input/],
    [['lightning-distance', 'time=5', 'rule=guess'], /rule: give one of/],
    [['current-from-power', 'power=5', '--region', 'mars'], /no region "mars"/],
    [['no-such-thing'], /no calculation "no-such-thing"/],
    [[], /name a calculation/],
    [['--colour'], /--colour/],
  ])('answers 2, names the input and prints nothing for %j', async (args, message) => {
    const { status, out, err } = await said(...args, '--json');
    expect([status, out]).toEqual([2, '']);
    expect(err).toMatch(message);
  });
});
