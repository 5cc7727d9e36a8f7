import { compileFamily, type CompiledFamily } from '../../../src/core/families/draw.js';
import { familySchema, type Family } from '../../../src/core/families/schema.js';

/** A small sound family of the tests' own, as somebody would write it; a test changes what it is about. */
export function invented(changes: Record<string, unknown> = {}): Record<string, unknown> {
  return {
    id: 'nf-invented',
    revision: 1,
    title: 'Invented',
    objectives: ['FU-02'],
    asks: 'The current.',
    stories: ['A heater takes {P} W from {V} V. What current is that, in amperes?'],
    inputs: { P: { label: 'power', unit: 'W', min: 100, max: 2000, step: 100 } },
    constants: { V: { value: 230, unit: 'V', source: 'supply', basis: 'read' } },
    answer: {
      symbol: 'I',
      unit: 'A',
      expr: 'P / V',
      kind: 'number',
      round: { mode: 'nearest', dp: 2 },
      accept: { belowRel: 0.02, aboveRel: 0.02, belowAbs: 0, aboveAbs: 0, sigFigs: 2 },
      acceptText: 'Within 2 %.',
    },
    formula: { words: 'Power divided by voltage.', symbols: 'I = P / V' },
    steps: ['{P} W / {V} V = {I|2} A.'],
    tellTales: [
      { name: 'doubled', label: 'Doubled it', expr: '2 * P / V', direction: 'safe-side', tell: 'Once only.' },
      { name: 'halved', label: 'Halved it', expr: 'P / V / 2', direction: 'unsafe', tell: 'All of it.' },
      { name: 'multiplied', label: 'Multiplied', expr: 'P * V', direction: 'wrong', tell: 'Divide.' },
    ],
    minWrong: 3,
    caution: 'plug',
    sources: ['supply'],
    checked: '2026-11-25',
    regions: { uk: { available: true }, eu: { available: true }, na: { available: false } },
    ...changes,
  };
}

export const inventedFamily = (changes: Record<string, unknown> = {}): Family => familySchema.parse(invented(changes));

export function inventedCompiled(changes: Record<string, unknown> = {}): CompiledFamily {
  return compileFamily(inventedFamily(changes), 'uk') as CompiledFamily;
}

/** The invented answer with changes. */
export const answerWith = (changes: Record<string, unknown>): Record<string, unknown> => ({
  ...(invented()['answer'] as object),
  ...changes,
});
