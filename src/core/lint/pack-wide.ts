import { syllable } from 'syllable';
import { textAt } from '../pack-draft.js';
import type { Item, LintFinding, PackRule } from './item.js';
import { contentStems, plainText, sentencesOf, wordsOf } from './words.js';

/** Rules about all questions of a pack together. */

const HDR = 'Haladyna, Downing and Rodriguez 2002';

export const packRules: PackRule[] = [
  {
    name: 'similar-question',
    severity: 'warning',
    why: 'Two questions in nearly the same words count one piece of knowledge twice, or confuse people who remember the other.',
    source: 'our own; share of content words in common (Jaccard) at least 0.7',
    findAll: (pack) => similar(pack.items),
  },
  {
    name: 'hard-to-read',
    severity: 'warning',
    why: 'Candidates are from twelve years up; what is hard to read tests reading.',
    source: `flaw 26; ${HDR}; Flesch-Kincaid grade above 10 over an objective's questions of 100 words or more (the formula from memory)`,
    findAll(pack) {
      return [...grouped(pack.items)].flatMap(([objective, items]): LintFinding[] => {
        const texts = items.flatMap((item) => [...item.stems, ...item.choices].map(({ text }) => text));
        const grade = readingGrade(texts);
        if (grade === null || grade <= 10) return [];
        const message = `The questions of ${objective} read at grade ${grade.toFixed(1)}; 10 is the most. Use shorter sentences and words.`;
        return [{ path: items[0]?.path ?? [], message }];
      });
    },
  },
  {
    name: 'source-without-year',
    severity: 'warning',
    why: 'A document without its year or edition cannot be looked up, and nobody sees when it is out of date.',
    source: 'our own',
    findAll({ draft }) {
      return draft.sources.flatMap(({ whole }, index): LintFinding[] => {
        if (whole === null || ['computed', 'common-practice', 'memory'].includes(whole.basis)) return [];
        if (/\b(?:1[89]|20)\d\d\b/.test(`${whole.title} ${whole.note ?? ''}`)) return [];
        return [
          {
            path: ['sources', index, 'title'],
            message: `The source "${whole.id}" has no year. Add the year of the edition, or the day on which it was read.`,
          },
        ];
      });
    },
  },
  {
    name: 'too-few-questions',
    severity: 'warning',
    why: 'What is asked once is learnt by heart as one sentence.',
    source: 'our own; the aims in pack.yaml',
    findAll({ draft }) {
      const aims = draft.head?.aims;
      if (aims === undefined) return [];
      return draft.objectives.flatMap(({ whole }, index): LintFinding[] => {
        if (whole === null) return [];
        const [have, want] = [
          draft.questions.filter(({ raw }) => textAt(raw, 'objective') === whole.code).length,
          aims[whole.weight - 1] ?? 0,
        ];
        if (have >= want) return [];
        return [
          {
            path: ['objectives', index, 'code'],
            message: `${whole.code} has ${have} fixed questions; the pack aims at ${want} for its weight of ${whole.weight}.`,
          },
        ];
      });
    },
  },
  {
    name: 'mostly-recall',
    severity: 'warning',
    why: 'Knowing a sentence is not knowing what to do. A third at least should be about people doing something.',
    source: 'our own; packs of 20 questions or more',
    findAll({ draft }) {
      const questions = draft.questions.flatMap(({ whole }) => whole ?? []);
      const doing = questions.filter(({ demand }) => demand !== 'recall').length;
      if (questions.length < 20 || doing * 3 >= questions.length) return [];
      return [
        { path: ['questions', 0], message: `${doing} of ${questions.length} questions ask to apply or to judge. Write more of these.` },
      ];
    },
  },
];

function similar(items: readonly Item[]): LintFinding[] {
  const sets = items.map((item) => contentStems(item.stems[0]?.text ?? ''));
  const withWord = new Map<string, number[]>();
  return items.flatMap((item, index): LintFinding[] => {
    const own = sets[index] ?? new Set();
    const common = new Map<number, number>();
    for (const word of own) for (const other of withWord.get(word) ?? []) common.set(other, (common.get(other) ?? 0) + 1);
    for (const word of own) withWord.set(word, [...(withWord.get(word) ?? []), index]);
    const twin = [...common].find(
      ([other, shared]) => shared / (own.size + (sets[other]?.size ?? 0) - shared) >= 0.7 && shared >= 3 && sameKind(item, items[other]),
    );
    const first = twin === undefined ? undefined : items[twin[0]];
    if (first === undefined) return [];
    return [
      {
        path: item.stems[0]?.path ?? item.path,
        first: first.stems[0]?.path ?? first.path,
        message: `This question is in nearly the same words as ${first.id}. Ask something else, or take one out.`,
      },
    ];
  });
}

/** A fixed question may go over what a family asks with fresh numbers; two fixed ones, or two families, should differ. */
const sameKind = (a: Item, b: Item | undefined): boolean => b !== undefined && (a.kind === 'family') === (b.kind === 'family');

function grouped(items: readonly Item[]): Map<string, Item[]> {
  const groups = new Map<string, Item[]>();
  for (const item of items.filter(({ kind }) => kind !== 'family'))
    groups.set(item.objective, [...(groups.get(item.objective) ?? []), item]);
  return groups;
}

/** Flesch-Kincaid grade of English texts; null under 100 words. Options without a stop at their end count as sentences. */
export function readingGrade(texts: readonly string[]): number | null {
  const words = texts.flatMap((text) => wordsOf(text)).filter((word) => /\p{L}/u.test(word));
  if (words.length < 100) return null;
  const sentences = texts.reduce((sum, text) => sum + Math.max(1, sentencesOf(text).length), 0);
  const syllables = words.reduce((sum, word) => sum + Math.max(1, syllable(plainText(word))), 0);
  return (0.39 * words.length) / sentences + (11.8 * syllables) / words.length - 15.59;
}
