import type { z } from 'zod';
import { packFileSchemas } from '../../core/pack.js';
import { valueAt } from './issues.js';

type Issue = z.core.$ZodIssue;

/** A question in which nothing is wrong but, perhaps, its options. */
const sound = {
  id: 'AA-00-000',
  revision: 1,
  objective: 'AA-00',
  kind: 'single',
  demand: 'recall',
  stem: 'x',
  explanation: 'x',
  sources: ['x'],
  checked: '2000-01-01',
};

/**
 * The issues that the schema of questions holds back: its rules about options (one key, a reason for each wrong one) do not run
 * on a question with any other fault. Here they run on the options alone, so that all faults of a file are told at once.
 */
export function heldBack(list: unknown, issues: readonly Issue[]): Issue[] {
  if (!Array.isArray(list)) return [];
  const broken = new Set(issues.filter(({ code }) => code !== 'custom').map(({ path }) => path[0]));
  return list.flatMap((question: unknown, index) => {
    const options = valueAt(question, ['options']);
    if (!broken.has(index) || !Array.isArray(options)) return [];
    const error = packFileSchemas.questions.element.safeParse({ ...sound, options: options.map(marks) }).error;
    return (error?.issues ?? [])
      .filter(({ code }) => code === 'custom')
      .map((issue): Issue => ({ ...issue, path: [index, ...issue.path] }));
  });
}

/** An option without its words: whether it is the key, and whether it has a reason. */
function marks(option: unknown): unknown {
  return {
    text: 'x',
    ...(valueAt(option, ['key']) === true ? { key: true } : {}),
    ...(valueAt(option, ['why']) === undefined ? {} : { why: 'x' }),
  };
}
