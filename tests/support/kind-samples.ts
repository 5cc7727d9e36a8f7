import type { Drawing } from '../../src/core/drawing.js';
import { fixedQuestionSchema, type FixedKind, type QuestionOf } from '../../src/core/questions/schema.js';

/** One question of each kind, on wholesome nonsense whose right answer anybody can see. */

const common = {
  revision: 1,
  objective: 'AA-01',
  demand: 'apply',
  explanation: 'As everybody knows.',
  sources: ['book'],
  caution: 'general',
  checked: '2026-11-26',
};

const raw: Readonly<Record<FixedKind, object>> = {
  single: {
    ...common,
    id: 'AA-01-001',
    kind: 'single',
    stem: 'Which comes first in the alphabet?',
    options: [
      { text: 'Alpha', key: true },
      { text: 'Bravo', why: 'Second.' },
      { text: 'Charlie', why: 'Third.' },
      { text: 'Delta', why: 'Fourth.' },
    ],
  },
  several: {
    ...common,
    id: 'AA-01-101',
    kind: 'several',
    stem: 'Which of these numbers are even?',
    statements: [
      { text: 'Two is even', holds: true },
      { text: 'Three is even', holds: false, why: 'Three is odd; sharing it in two leaves one over.' },
      { text: 'Four is even', holds: true, why: 'Twice two.' },
      { text: 'Five is even', holds: false, why: 'Five is odd.' },
    ],
  },
  order: {
    ...common,
    id: 'AA-01-102',
    kind: 'order',
    stem: 'A battery is to be charged. Put the steps in order.',
    steps: [
      { text: 'Read the maker’s instructions', why: 'Everything else depends on them.' },
      { text: 'Open the window', why: 'Gas must get out.' },
      { text: 'Take off your watch', tied: true, why: 'It could short the battery.' },
      { text: 'Connect the charger', why: 'Only then.' },
    ],
  },
  pairs: {
    ...common,
    id: 'AA-01-103',
    kind: 'pairs',
    stem: 'Match each quantity with its unit.',
    pairs: [
      { left: 'Voltage', right: 'volt', why: 'V.' },
      { left: 'Current', right: 'ampere', why: 'A.' },
      { left: 'Potential difference', right: 'volt', why: 'V again.' },
    ],
    spare: [{ text: 'kilogram', why: 'That is mass.' }],
  },
  place: {
    ...common,
    id: 'AA-01-104',
    kind: 'place',
    stem: 'Where is the round one?',
    drawing: 'two-shapes',
    places: [
      { part: 'box', text: 'on the left', why: 'It has corners.' },
      { part: 'ball', text: 'on the right', key: true },
      { part: 'floor', text: 'below both', why: 'It is a line.' },
    ],
  },
};

export const sampleOf = <K extends FixedKind>(kind: K): QuestionOf<K> => fixedQuestionSchema.parse(raw[kind]) as QuestionOf<K>;

export const twoShapes: Drawing = {
  id: 'two-shapes',
  title: 'Two shapes on a line',
  description: 'A square and a circle stand beside each other on a line.',
  width: 480,
  height: 200,
  parts: [
    { id: 'box', name: 'The box', at: [100, 60] },
    { id: 'ball', name: 'The ball', at: [300, 60] },
    { id: 'floor', name: 'The floor', at: [420, 150] },
  ],
  body: [
    {
      name: 'g',
      attributes: {},
      children: [
        { name: 'title', attributes: {}, children: ['The box'] },
        { name: 'rect', attributes: { x: '60', y: '80', width: '80', height: '70' }, children: [] },
        { name: 'text', attributes: { class: 'name middle', x: '100', y: '190' }, children: ['box'] },
      ],
    },
    { name: 'circle', attributes: { class: 'tint', cx: '300', cy: '115', r: '35' }, children: [] },
    { name: 'line', attributes: { class: 'thick', x1: '20', y1: '150', x2: '460', y2: '150' }, children: [] },
  ],
};
