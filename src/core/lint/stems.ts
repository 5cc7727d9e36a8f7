import { abbreviationPattern, type Item, type LintFinding, type Rule } from './item.js';
import { contentStems, plainText, sentencesOf, wordsOf } from './words.js';

/** Rules about how a question is put. */

const HDR = 'Haladyna, Downing and Rodriguez 2002';
const NB = 'flaw list of a national board’s item-writing guide, as adapted in BMC Med. Educ. 16 (2016)';

const each = (item: Item, says: (text: string) => string | null): LintFinding[] =>
  item.stems.flatMap(({ text, path }) => {
    const message = says(text);
    return message === null ? [] : [{ path, message }];
  });

const lastSentence = (text: string): string => sentencesOf(text).at(-1) ?? text;
/** Small letters only: a "NOT" in capitals is meant to be seen. "Not only" is no negation. */
const negative =
  /\bleast (?:likely|important|suitable|safe|dangerous)\b|\bnot\b(?! only)|\bexcept\b|\bnever\b|\bincorrect\b|\bfalse\b|\bunsafe\b|\bwrong\b/;
const negations = /\b(?:not|no|never|none|cannot|without|un(?:safe|true|likely|necessary)|in(?:correct|valid))\b/;
const isNegative = (text: string): boolean => negative.test(lastSentence(text).replace(/[‘’]/g, "'"));

const vowelSound = /^(?:[aeio]|u(?!n[iI]|s[aeiou]|[bt][ie])|hour|honest|[AEFHILMNORSX](?=[A-Z0-9.]|\b(?!\w)))/;

export const stemRules: Rule[] = [
  {
    name: 'negative-stem',
    severity: 'warning',
    why: 'A "not" in the question is read over; people who know the matter then choose wrongly.',
    source: `flaw 9; ${HDR}`,
    find: (item) =>
      item.kind === 'several' || item.kind === 'family'
        ? []
        : each(item, (text) =>
            isNegative(text)
              ? 'The question asks by a negation ("not", "except", "least", "wrong"). Ask what is right instead, or put the word in capitals.'
              : null,
          ),
  },
  {
    name: 'double-negative',
    severity: 'warning',
    why: 'A negation in the question and one in an option make a riddle.',
    source: `flaw 10; ${HDR}`,
    find(item) {
      if (!item.stems.some(({ text }) => isNegative(text) || /\bNOT\b|\bEXCEPT\b/.test(lastSentence(text)))) return [];
      return item.choices
        .filter(({ text }) => negations.test(plainText(text)))
        .map(({ path }) => ({ path, message: 'The question is negative, and so is this option. Say one of them the other way round.' }));
    },
  },
  {
    name: 'article-cue',
    severity: 'warning',
    why: 'A question that ends in "a" or "an" fits only the options that begin with the right sound.',
    source: `flaw 12; ${HDR}`,
    find(item) {
      return each(item, (text) => {
        if (!/\ban?\s*[:.…]*$/.test(text.trim())) return null;
        const sounds = new Set(item.choices.map((choice) => vowelSound.test(choice.text)));
        return sounds.size < 2
          ? null
          : 'The question ends in "a" or "an", which fits some of the options only. Put the article into the options.';
      });
    },
  },
  {
    name: 'number-cue',
    severity: 'warning',
    why: 'A verb at the end of the question that fits only one option in number points to it.',
    source: `flaw 13; ${HDR}`,
    find(item) {
      return each(item, (text) => {
        const verb = /\b(is|has|was|are|have|were)\s*[:.…]*$/.exec(text.trim())?.[1];
        if (verb === undefined) return null;
        const unfit = ['is', 'has', 'was'].includes(verb)
          ? /^(?:two|three|four|some|many|several|these|those|both)\b/i
          : /^(?:an?|one|each|this|that)\b/i;
        const misfits = item.choices.filter((choice) => unfit.test(choice.text)).length;
        return misfits === 0 || misfits === item.choices.length
          ? null
          : `The question ends in "${verb}", which fits some of the options only. Finish the sentence in the question.`;
      });
    },
  },
  {
    name: 'long-stem',
    severity: 'warning',
    why: 'A long question tests reading.',
    source: `flaw 25; ${HDR}; limits of our own: 40 words in one sentence, 80 in all, four sentences before the question`,
    find: (item) =>
      each(item, (text) => {
        const [words, sentences] = [wordsOf(text).length, sentencesOf(text).length];
        if (words > 80) return `The question has ${words} words; 80 are enough. Leave out what is not needed for the answer.`;
        if (sentences > 5) return `There are ${sentences - 1} sentences before the question; four are enough.`;
        return sentences === 1 && words > 40 ? `The question is one sentence of ${words} words. Make two of it.` : null;
      }),
  },
  {
    name: 'unfocused-stem',
    severity: 'warning',
    why: 'A question that cannot be answered before the options are read tests four statements at once.',
    source: `flaw 27; ${HDR}`,
    find: (item) =>
      each(item, (text) => {
        const last = plainText(lastSentence(text));
        if (
          item.kind === 'single' &&
          /^which of (?:the following|these)(?: statements?)? (?:is|are) (?:true|correct|right)$/.test(last) &&
          sentencesOf(text).length === 1
        )
          return 'Say what the question is about; "which of these is true" alone can be asked of anything.';
        if (contentStems(text).size < 2) return 'The question has hardly a word of its own. Say what is asked.';
        if (/[?.:…]["”’)]*$/.test(text.trim())) return null;
        return 'The question ends in no question mark, full stop or colon.';
      }),
  },
  {
    name: 'blanks',
    severity: 'warning',
    why: 'A gap at the start or several gaps must be held in mind while the rest is read.',
    source: `flaw 28; ${HDR}`,
    find: (item) =>
      each(item, (text) => {
        const gaps = [...text.matchAll(/_{3,}|\.{4,}/g)];
        if (gaps.length === 0) return null;
        const last = gaps.at(-1);
        const atEnd = last !== undefined && text.slice((last.index ?? 0) + last[0].length).trim().length <= 1;
        return gaps.length === 1 && atEnd ? null : 'The question has gaps to fill in. Ask a whole question.';
      }),
  },
  {
    name: 'depends-on-another',
    severity: 'warning',
    why: 'Questions are asked one by one, on different days.',
    source: `flaw 30; ${HDR}`,
    find: (item) =>
      each(item, (text) =>
        /\b(?:previous|last|next) question\b|\bas above\b|\bsame (?:circuit|question) as\b/i.test(text)
          ? 'The question refers to another, which may not have been asked. Say everything here.'
          : null,
      ),
  },
  {
    name: 'opinion',
    severity: 'warning',
    why: 'An opinion cannot be wrong.',
    source: `flaw 33; ${HDR}`,
    find: (item) =>
      each(item, (text) =>
        /\b(?:do you think|in your opinion|do you feel|would you prefer)\b/i.test(text)
          ? 'The question asks for an opinion. Name the rule, the maker or the danger it is measured by.'
          : null,
      ),
  },
  {
    name: 'unknown-abbreviation',
    severity: 'warning',
    why: 'An abbreviation that the syllabus does not use is a riddle to a beginner.',
    source: `flaw 34; ${NB}`,
    find(item, pack) {
      const texts = [...item.stems, ...item.choices];
      const all = texts.map(({ text }) => text).join(' ');
      return texts.flatMap(({ text, path }): LintFinding[] => {
        const strange = (text.match(abbreviationPattern) ?? []).find(
          (word) => !common.has(word) && !pack.abbreviations.has(word) && !all.includes(`(${word})`),
        );
        return strange === undefined
          ? []
          : [{ path, message: `"${strange}" is not used in the syllabus. Write it out, with the letters in brackets after it.` }];
      });
    },
  },
];

/** Units, letters of options, marks that everybody knows; NOT and its like are emphasis. */
const common = new Set('NOT EXCEPT OK TV PC UK EU US USA GB AC DC RF LED USB'.split(' '));
