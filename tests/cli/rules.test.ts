import { describe, expect, it } from 'vitest';
import { run } from '../../src/cli/rules.js';
import { lintRules } from '../../src/core/lint/index.js';

async function rules(...args: string[]): Promise<{ status: number; out: string; err: string }> {
  const [out, err]: [string[], string[]] = [[], []];
  const status = await run(args, { out: (text) => void out.push(text), err: (text) => void err.push(text) });
  return { status, out: out.join('\n'), err: err.join('\n') };
}

describe('rungwise rules', () => {
  it('explains every rule, and how one occurrence is excused', async () => {
    const { status, out } = await rules();
    expect(status).toBe(0);
    for (const { name, why } of lintRules) for (const text of [`${name} (`, why]) expect(out).toContain(text);
    expect(out).toContain('excuses:');
  });

  it('explains one by its name, as text or as one document', async () => {
    expect((await rules('long-stem')).out).toMatch(/^long-stem \(warning\)/);
    const { rules: found } = JSON.parse((await rules('long-stem', '--json')).out) as {
      rules: { rule: string; why: string; source: string }[];
    };
    expect(found).toHaveLength(1);
    expect(found[0]?.source).not.toBe('');
  });

  it('answers 2 for a name that it does not know, with the nearest', async () => {
    const { status, err } = await rules('long-stemm');
    expect([status, err]).toEqual([2, 'There is no rule "long-stemm". Did you mean "long-stem"?']);
    expect((await rules('a', 'b')).status).toBe(2);
  });
});
