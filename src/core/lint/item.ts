import type { Family } from '../families/schema.js';
import { textsAt, textAt, type PackDraft, type Path } from '../pack-draft.js';
import type { FixedQuestion } from '../questions/schema.js';
import { contentStems, wordsOf } from './words.js';

/** A question as the rules of the lint look at it, whatever its kind. */
export interface Item {
  kind: FixedQuestion['kind'] | 'family';
  id: string;
  path: Path;
  objective: string;
  /** The question, or the stories of a family. */
  stems: { text: string; path: Path }[];
  /** Options, statements, steps, right-hand texts or places; none for a family. */
  choices: Choice[];
  /** Whether the choices stand in an order of their own, which is kept. */
  ordered: boolean;
  explanation: string;
}

export interface Choice {
  text: string;
  path: Path;
  /** Right, true, or (where nothing is wrong in itself) false throughout. */
  key: boolean;
}

/** What the rules know of the pack as a whole. */
export interface PackView {
  draft: PackDraft;
  items: Item[];
  /** In how many questions each content word stands. */
  frequency: ReadonlyMap<string, number>;
  /** Abbreviations that the syllabus uses, so that candidates know them. */
  abbreviations: ReadonlySet<string>;
}

export interface LintFinding {
  path: Path;
  message: string;
  first?: Path;
}

export interface Rule {
  name: string;
  severity: 'error' | 'warning';
  /** What is wrong with it, for people. */
  why: string;
  /** The number in the list of item-writing flaws it was made from, and its source. */
  source: string;
  find: (item: Item, pack: PackView) => LintFinding[];
}

/** A rule about all questions together. */
export interface PackRule extends Omit<Rule, 'find'> {
  findAll: (pack: PackView) => LintFinding[];
}

export function packView(draft: PackDraft): PackView {
  const items = [
    ...draft.questions.flatMap(({ whole }, index) => (whole ? [questionItem(whole, ['questions', index])] : [])),
    ...draft.families.flatMap(({ whole }, index) => (whole ? [familyItem(whole, ['families', index])] : [])),
  ];
  const frequency = new Map<string, number>();
  for (const item of items)
    for (const stem of new Set(item.stems.flatMap(({ text }) => [...contentStems(text)])))
      frequency.set(stem, (frequency.get(stem) ?? 0) + 1);
  return { draft, items, frequency, abbreviations: abbreviationsOf(draft) };
}

function questionItem(question: FixedQuestion, path: Path): Item {
  return {
    kind: question.kind,
    id: question.id,
    path,
    objective: question.objective,
    stems: [{ text: question.stem, path: [...path, 'stem'] }],
    choices: choicesOf(question, path),
    ordered: question.kind === 'place' || (question.kind === 'single' && question.order === 'fixed'),
    explanation: question.explanation,
  };
}

function choicesOf(question: FixedQuestion, path: Path): Choice[] {
  const at = (list: string, index: number, field: string): Path => [...path, list, index, field];
  switch (question.kind) {
    case 'single':
      return question.options.map(({ text, key }, index) => ({ text, key: key === true, path: at('options', index, 'text') }));
    case 'several':
      return question.statements.map(({ text, holds }, index) => ({ text, key: holds, path: at('statements', index, 'text') }));
    case 'order':
      return question.steps.map(({ text }, index) => ({ text, key: false, path: at('steps', index, 'text') }));
    case 'pairs': {
      const spare = (question.spare ?? []).map(({ text }, index) => ({ text, key: false, path: at('spare', index, 'text') }));
      return [...question.pairs.map(({ left }, index) => ({ text: left, key: false, path: at('pairs', index, 'left') })), ...spare];
    }
    case 'place':
      return question.places.map(({ text, key }, index) => ({ text, key: key === true, path: at('places', index, 'text') }));
  }
}

function familyItem(family: Family, path: Path): Item {
  const stems = family.stories.map((text, index) => ({ text, path: [...path, 'stories', index] }));
  return { kind: 'family', id: family.id, path, objective: family.objectives[0] ?? '', stems, choices: [], ordered: true, explanation: '' };
}

export const abbreviationPattern = /\b\p{Lu}{2,6}\b/gu;

function abbreviationsOf(draft: PackDraft): ReadonlySet<string> {
  const texts = draft.objectives.flatMap(({ raw }) => [
    ...['title', 'mustKnow', 'why'].map((key) => textAt(raw, key)),
    ...textsAt(raw, ['facts', '*', 'text']).map(({ text }) => text),
  ]);
  const topics = draft.topics.flatMap(({ raw }) => [textAt(raw, 'title'), textAt(raw, 'blurb')]);
  return new Set([...texts, ...topics].flatMap((text) => text.match(abbreviationPattern) ?? []));
}

/** The key of a question with one right choice; null where there are several or none. */
export function soleKey(item: Item): { key: Choice; wrong: Choice[] } | null {
  if (item.kind !== 'single') return null;
  const key = item.choices.find((choice) => choice.key);
  return key === undefined ? null : { key, wrong: item.choices.filter((choice) => choice !== key) };
}

/** Whether all texts say nothing but a number of words up to this. */
export const shortOnes = (choices: readonly Choice[], words: number): boolean => choices.every(({ text }) => wordsOf(text).length <= words);

/** What is said of each choice by itself; null for nothing. */
export const each = (choices: readonly Choice[], says: (choice: Choice, index: number) => string | null): LintFinding[] =>
  choices.flatMap((choice, index) => {
    const message = says(choice, index);
    return message === null ? [] : [{ path: choice.path, message }];
  });
