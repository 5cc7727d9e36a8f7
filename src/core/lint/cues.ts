import { shortOnes, soleKey, type LintFinding, type Rule } from './item.js';
import { areOpposite } from './opposites.js';
import { contentStems, holdsWord, lettersIn } from './words.js';

/** Rules about what gives the key away to somebody who does not know. */

const HDR = 'Haladyna, Downing and Rodriguez 2002';
const NB = 'flaw list of a national board’s item-writing guide, as adapted in BMC Med. Educ. 16 (2016)';

const set = (words: string): ReadonlySet<string> => new Set(words.split(' '));
const absolutes = set('always never all none every only completely impossible cannot totally entirely');
const vague = set('usually often sometimes generally may might rarely probably normally typically');
const negatives = set('not no never none nothing nobody');

const at = (path: LintFinding['path'], message: string): LintFinding[] => [{ path, message }];

export const cueRules: Rule[] = [
  {
    name: 'longest-key',
    severity: 'warning',
    why: 'A key that is much longer than the others is found by its length.',
    source: `flaw 1; ${HDR}`,
    find(item) {
      const found = soleKey(item);
      if (found === null) return [];
      const length = lettersIn(found.key.text);
      const next = Math.max(...found.wrong.map(({ text }) => lettersIn(text)));
      if (length < 1.3 * next || length <= next + 8) return [];
      const message = `The key has ${length} letters and the longest wrong option ${next}, so its length gives it away. Shorten the key, or move detail into the explanation.`;
      return at(found.key.path, message);
    },
  },
  {
    name: 'specific-key',
    severity: 'warning',
    why: 'A key that alone gives a figure, a bracket or a reason is found by its detail.',
    source: `flaw 3; ${HDR}`,
    find(item) {
      const found = soleKey(item);
      if (found === null) return [];
      const signs: [string, RegExp][] = [
        ['a bracket', /[()]/],
        ['a figure', /\d/],
        ['a reason ("because")', /\bbecause\b/i],
        ['two commas', /,.*,/],
      ];
      const alone = signs.filter(([, sign]) => sign.test(found.key.text) && !found.wrong.some(({ text }) => sign.test(text)));
      return alone.length === 0 ? [] : at(found.key.path, `The key alone has ${alone[0]?.[0]}. Give the others as much, or take it out.`);
    },
  },
  {
    name: 'absolute-words',
    severity: 'warning',
    why: 'Words such as "always" and "never" mark the wrong options where the key has none.',
    source: `flaw 4; ${HDR}`,
    find(item) {
      const found = soleKey(item);
      if (found === null || holdsWord(found.key.text, absolutes)) return [];
      const strong = found.wrong.filter(({ text }) => holdsWord(text, absolutes));
      if (strong.length < 2) return [];
      return at(
        strong[0]?.path ?? found.key.path,
        'Two or more wrong options say "always", "never", "only" or the like, and the key does not. Take such words out.',
      );
    },
  },
  {
    name: 'vague-key',
    severity: 'warning',
    why: 'Words such as "usually" and "may" make a statement easy to defend; where the key alone has one, it is found.',
    source: `flaw 5; ${NB}`,
    find(item) {
      const found = soleKey(item);
      if (found === null || !holdsWord(found.key.text, vague) || found.wrong.some(({ text }) => holdsWord(text, vague))) return [];
      return at(found.key.path, 'The key alone says "usually", "may" or the like. Say it plainly, or give the others such a word.');
    },
  },
  {
    name: 'negative-option',
    severity: 'warning',
    why: 'A "not" in one option alone is easily missed, and makes that option stand out.',
    source: `flaw 11; ${HDR}`,
    find(item) {
      const found = soleKey(item);
      if (found === null || !holdsWord(found.key.text, negatives) || found.wrong.some(({ text }) => holdsWord(text, negatives))) return [];
      return at(found.key.path, 'The key alone says "not", "no" or "never". Say what is done instead, or give another option one.');
    },
  },
  {
    name: 'repeated-word',
    severity: 'warning',
    why: 'A striking word of the question that stands in the key alone points to it.',
    source: `flaw 14; ${HDR}`,
    find(item, pack) {
      const found = soleKey(item);
      if (found === null || found.wrong.length === 0) return [];
      const wrong = new Set(found.wrong.flatMap(({ text }) => [...contentStems(text)]));
      const stem = contentStems(item.stems[0]?.text ?? '');
      const common = Math.max(2, 0.05 * pack.items.length);
      const telling = [...contentStems(found.key.text)].filter(
        (word) => word.length > 3 && stem.has(word) && !wrong.has(word) && (pack.frequency.get(word) ?? 0) <= common,
      );
      if (telling.length === 0) return [];
      return at(
        found.key.path,
        `The word "${telling[0]}…" stands in the question and in the key, and in no other option. Use another word, or give it to a wrong option too.`,
      );
    },
  },
  {
    name: 'convergence',
    severity: 'warning',
    why: 'Where the options are mixed from a few pieces, the one that shares most pieces with the others is the key.',
    source: `flaw 15; ${NB}`,
    find(item) {
      const found = soleKey(item);
      if (found === null || found.wrong.length < 3) return [];
      const pieces = [found.key, ...found.wrong].map(({ text }) => contentStems(text));
      if (pieces.some(({ size }) => size < 2)) return [];
      const shared = pieces.map(
        (own, index) => [...own].filter((piece) => pieces.some((other, place) => place !== index && other.has(piece))).length,
      );
      const sums = pieces.map((own, index) =>
        pieces.reduce((sum, other, place) => sum + (place === index ? 0 : [...own].filter((piece) => other.has(piece)).length), 0),
      );
      const [key = 0, ...others] = sums;
      if ((shared[0] ?? 0) < 2 || key < 4 || key < Math.max(...others) + 2) return [];
      return at(
        found.key.path,
        'The key shares more words with the other options than they share with each other, so it can be worked out. Mix the pieces evenly.',
      );
    },
  },
  {
    name: 'opposite-pair',
    severity: 'warning',
    why: 'Where two options are each other’s opposite, one of them is the key; the rest are thrown away.',
    source: `flaw 21; ${HDR}`,
    find(item) {
      const found = soleKey(item);
      if (found === null) return [];
      const opposite = found.wrong.find(({ text }) => areOpposite(text, found.key.text));
      if (opposite === undefined) return [];
      const rest = found.wrong.filter((choice) => choice !== opposite);
      if (rest.some((a) => rest.some((b) => areOpposite(a.text, b.text)))) return [];
      return at(
        found.key.path,
        'The key and one wrong option differ by an opposite alone. Make the others a second pair, or change one of the two.',
      );
    },
  },
  {
    name: 'unit-cue',
    severity: 'warning',
    why: 'A key that alone has a unit, lacks it, or is given more exactly, is found by that.',
    source: `flaw 31; ${HDR}`,
    find(item) {
      const found = soleKey(item);
      if (found === null || !shortOnes([found.key, ...found.wrong], 4)) return [];
      const figures = (text: string): number => (text.match(/\d/g) ?? []).length;
      const unit = (text: string): boolean => /\d\s*[A-Za-zµΩ°%]/.test(text);
      if (![found.key, ...found.wrong].every(({ text }) => /\d/.test(text))) return [];
      const [hasUnit, others] = [unit(found.key.text), found.wrong.map(({ text }) => unit(text))];
      if (others.every((other) => other !== hasUnit)) return at(found.key.path, `The key alone has ${hasUnit ? 'a' : 'no'} unit.`);
      if (figures(found.key.text) > Math.max(...found.wrong.map(({ text }) => figures(text))) + 1)
        return at(found.key.path, 'The key alone is given with so many figures. Round it, or give the others as many.');
      return [];
    },
  },
  {
    name: 'punctuation-cue',
    severity: 'warning',
    why: 'A full stop, a capital or a space too many in the key alone betrays that it was written with more care.',
    source: `flaw 32; ${HDR}`,
    find(item) {
      const found = soleKey(item);
      if (found === null) return [];
      const marks: [string, (text: string) => boolean][] = [
        ['ends with a full stop', (text) => /[.!]$/.test(text)],
        ['begins with a small letter', (text) => /^\p{Ll}/u.test(text)],
        ['has two spaces', (text) => / {2}/.test(text)],
      ];
      for (const [what, has] of marks) {
        const key = has(found.key.text);
        if (found.wrong.every(({ text }) => has(text) !== key)) {
          return at(found.key.path, key ? `The key alone ${what}.` : `Each wrong option ${what}, and the key does not.`);
        }
      }
      return [];
    },
  },
];
