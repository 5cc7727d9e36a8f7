import { familySchema } from '../../src/core/families/schema.js';
import type { Pack } from '../../src/core/pack.js';
import { fixedQuestionSchema } from '../../src/core/questions/schema.js';

/** A pack small enough to reason about: three topics, six fixed questions, a number family and a choice family. */

const topicCodes = ['AA', 'BB', 'CC'] as const;

const single = (id: string) =>
  fixedQuestionSchema.parse({
    id,
    revision: 1,
    objective: id.slice(0, 5),
    kind: 'single',
    demand: 'apply',
    stem: `Stem of ${id}?`,
    options: [
      { text: `Key of ${id}`, key: true },
      { text: `Wrong one of ${id}`, why: 'First reason.' },
      { text: `Wrong two of ${id}`, why: 'Second reason.' },
      { text: `Wrong three of ${id}`, why: 'Third reason.' },
    ],
    explanation: `Explanation of ${id}.`,
    sources: ['book'],
    caution: id.startsWith('CC') ? 'line' : 'general',
    checked: '2026-11-25',
  });

const numberFamily = familySchema.parse({
  id: 'nf-twice',
  revision: 1,
  title: 'Power of a heater',
  objectives: ['AA-01'],
  asks: 'The power.',
  stories: ['A heater takes {I} A from {V} V. What power, in watts, does it take?'],
  inputs: { I: { label: 'current', unit: 'A', min: 2, max: 10, step: 1 } },
  constants: { V: { value: 230, unit: 'V', source: 'book', basis: 'read' } },
  answer: {
    symbol: 'P',
    unit: 'W',
    expr: 'V * I',
    kind: 'number',
    round: { mode: 'nearest', dp: 0 },
    accept: { belowRel: 0.02, aboveRel: 0.02, belowAbs: 0, aboveAbs: 0, sigFigs: 2 },
    acceptText: 'Within 2 %.',
  },
  formula: { words: 'Power is voltage times current.', symbols: 'P = V * I' },
  steps: ['Put the numbers in: {V} V × {I} A = {P} W.'],
  tellTales: [
    { name: 'divided', label: 'Divided instead of multiplied', expr: 'V / I', direction: 'unsafe', tell: 'Multiply volts by amperes.' },
    { name: 'other-supply', label: 'Used 120 V', expr: '120 * I', direction: 'unsafe', tell: 'Use the voltage that is printed.' },
  ],
  minWrong: 1,
  caution: 'mains',
  sources: ['book'],
  checked: '2026-11-25',
  regions: { uk: { available: true }, eu: { available: true }, na: { available: false, note: 'Other voltage.' } },
});

const choiceFamily = familySchema.parse({
  ...structuredClone(numberFamily),
  id: 'nf-fuse',
  title: 'Choosing a fuse',
  objectives: ['BB-01'],
  stories: ['A load takes {I} A at {V} V. Which is the smallest of 3 A, 5 A, 10 A and 13 A that is not below it?'],
  inputs: { I: { label: 'current', unit: 'A', choices: [2, 4, 7, 12] } },
  constants: {
    V: { value: 230, unit: 'V', source: 'book', basis: 'read' },
    LIST: { value: [3, 5, 10, 13], unit: 'A', source: 'book', basis: 'read' },
  },
  answer: { ...numberFamily.answer, symbol: 'F', unit: 'A', expr: 'nextUp(I, LIST)', kind: 'choice', options: 'LIST' },
  formula: { words: 'Take the smallest that is not below.', symbols: 'F >= I' },
  steps: ['Go up the list to {F} A.'],
  tellTales: [{ name: 'always-biggest', label: 'Took the biggest', expr: '13', direction: 'unsafe', tell: 'Bigger protects less.' }],
  minWrong: 0,
  mayCoincide: ['always-biggest'],
});

export function smallPack(): Pack {
  return {
    head: {
      id: 'small',
      title: 'Small pack',
      version: '1.0.0',
      licence: 'CC0-1.0',
      language: 'en-GB',
      authors: ['Nobody'],
      regions: ['uk', 'eu', 'na'],
      summary: 'For tests.',
    },
    topics: topicCodes.map((code) => ({ code, title: `Topic ${code}`, blurb: 'Short.' })),
    objectives: topicCodes.flatMap((topic) =>
      [1, 2].map((n) => ({
        code: `${topic}-0${n}`,
        topic,
        title: `Objective ${topic}-0${n}`,
        mustKnow: 'Know it.',
        why: 'It matters.',
        weight: n === 1 ? (3 as const) : (1 as const),
        facts: [{ text: 'A fact.', source: 'book', basis: 'read' as const }],
        misconceptions: [],
        caution: 'general',
      })),
    ),
    cautions: [
      { id: 'general', sign: 'general', text: 'Stop and ask a competent person.' },
      { id: 'line', sign: 'electric', text: 'Keep well back and call for help.' },
      { id: 'mains', sign: 'electric', text: 'Leave fixed wiring to an electrician.' },
    ],
    sources: [{ id: 'book', title: 'A book (2020)', short: 'Book', basis: 'read' }],
    questions: topicCodes.flatMap((topic) => [single(`${topic}-01-001`), single(`${topic}-02-001`)]),
    families: [numberFamily, choiceFamily],
    drawings: [],
    blueprints: [],
    skills: [],
  };
}
