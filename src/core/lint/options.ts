import { each, shortOnes, type LintFinding, type Rule } from './item.js';
import { readAmount } from './quantities.js';
import { lettersIn, plainText, wordsOf } from './words.js';

/** Rules about what the choices of a question say, whichever is the key. */

const HDR = 'Haladyna, Downing and Rodriguez 2002';
const NB = 'flaw list of a national board’s item-writing guide, as adapted in BMC Med. Educ. 16 (2016)';

const catchAll =
  /^(?:all|none|any|both) (?:of )?(?:the above|these|them|those)\b|\b(?:all|none|any|both) of (?:the above|these|them)\b|^no correct answer$/;
const combined =
  /^(?:both )?(?:option |answer )?[a-e1-5] (?:and|or) (?:option |answer )?[a-e1-5]$|\bboth of the (?:first|last) two\b|\bthe (?:first|last) two\b/;
const comparative =
  /^(?:it )?(?:is |gets |becomes |stays )?(?:the )?(?:higher|lower|more|less|same|larger|smaller|longer|shorter|unchanged|yes|no)$/;

export const optionRules: Rule[] = [
  {
    name: 'same-option',
    severity: 'error',
    why: 'Two choices that say the same cannot both be marked fairly.',
    source: `flaw 19; ${HDR}`,
    find({ choices }) {
      return choices.flatMap((choice, index): LintFinding[] => {
        const first = choices.slice(0, index).find((other) => saysTheSame(other.text, choice.text));
        return first === undefined
          ? []
          : [{ path: choice.path, first: first.path, message: 'Two options of one question say the same. Change one.' }];
      });
    },
  },
  {
    name: 'nearly-same-option',
    severity: 'warning',
    why: 'Choices that differ by one letter test reading, or are a slip of the pen.',
    source: `flaw 19; ${HDR}`,
    find({ choices }) {
      return choices.flatMap((choice, index): LintFinding[] => {
        const first = choices.slice(0, index).find((other) => oneLetterApart(plainText(other.text), plainText(choice.text)));
        return first === undefined
          ? []
          : [{ path: choice.path, first: first.path, message: 'Two options differ by one letter. Is that meant?' }];
      });
    },
  },
  {
    name: 'catch-all-option',
    severity: 'warning',
    why: '"All of the above" tests reading, not knowledge, and the options are shown in changing order.',
    source: `flaws 6 and 7; ${HDR}`,
    find: ({ choices }) =>
      each(choices, ({ text }) =>
        catchAll.test(plainText(text))
          ? 'This option stands for the others, which are shown in changing order. Write one of its own.'
          : null,
      ),
  },
  {
    name: 'combined-option',
    severity: 'warning',
    why: 'An option that names others by letter or place means nothing once they are shuffled.',
    source: `flaw 8; ${HDR}`,
    find: ({ choices }) =>
      each(choices, ({ text }) =>
        combined.test(plainText(text))
          ? 'This option names others by their place, and they are shown in changing order. Write out what is meant.'
          : null,
      ),
  },
  {
    name: 'unequal-options',
    severity: 'warning',
    why: 'One option of quite another length is chosen or passed over for that.',
    source: `flaw 2; ${HDR}`,
    find(item) {
      if (item.kind !== 'single' || shortOnes(item.choices, 3)) return [];
      const lengths = item.choices.map(({ text }) => lettersIn(text));
      const [longest, shortest] = [Math.max(...lengths), Math.min(...lengths)];
      if (longest <= 2 * shortest || longest <= shortest + 15) return [];
      const path = item.choices[lengths.indexOf(longest)]?.path ?? item.path;
      return [
        { path, message: `The longest option has ${longest} letters and the shortest ${shortest}. Bring them nearer to each other.` },
      ];
    },
  },
  {
    name: 'exhaustive-subset',
    severity: 'warning',
    why: 'Where "higher, lower, the same" leave nothing out, any further option is thrown away.',
    source: `flaw 22; ${NB}`,
    find(item) {
      if (item.kind !== 'single') return [];
      const plain = item.choices.map(({ text }) => comparative.test(plainText(text)));
      const count = plain.filter(Boolean).length;
      if (count < 2 || count === plain.length) return [];
      return [
        {
          path: item.choices[plain.indexOf(false)]?.path ?? item.path,
          message: 'The other options leave nothing out (such as higher, lower, the same), so this one cannot be right.',
        },
      ];
    },
  },
  {
    name: 'repeated-opening',
    severity: 'warning',
    why: 'Words that begin every option belong into the question, where they are read once.',
    source: `flaw 29; ${HDR}`,
    find(item) {
      if (item.kind !== 'single') return [];
      const openings = item.choices.map(({ text }) => wordsOf(text).slice(0, 3).join(' '));
      const [first = ''] = openings;
      if (first.split(' ').length < 3 || openings.some((opening) => opening !== first)) return [];
      return [
        { path: item.choices[0]?.path ?? item.path, message: `Every option begins with "${first}". Move these words into the question.` },
      ];
    },
  },
];

function saysTheSame(a: string, b: string): boolean {
  if (plainText(a) === plainText(b)) return true;
  const [x, y] = [readAmount(a), readAmount(b)];
  return x !== null && y !== null && x.unit === y.unit && Math.abs(x.value - y.value) <= 1e-9 * Math.abs(x.value);
}

/** Texts of over ten letters that one letter put in, left out or changed makes equal; figures and signs are real differences. */
function oneLetterApart(a: string, b: string): boolean {
  if (Math.min(a.length, b.length) <= 10 || Math.abs(a.length - b.length) > 1 || a === b) return false;
  let start = 0;
  while (start < Math.min(a.length, b.length) && a[start] === b[start]) start += 1;
  let end = 0;
  while (end < Math.min(a.length, b.length) - start && a[a.length - 1 - end] === b[b.length - 1 - end]) end += 1;
  const [inA, inB] = [a.slice(start, a.length - end), b.slice(start, b.length - end)];
  return inA.length <= 1 && inB.length <= 1 && /^\p{L}*$/u.test(inA + inB);
}
