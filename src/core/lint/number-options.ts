import { each, soleKey, type LintFinding, type Rule } from './item.js';
import { readAmount, readSpan, type Span } from './quantities.js';

/** Rules about choices that are numbers. */

const HDR = 'Haladyna, Downing and Rodriguez 2002';

export const numberRules: Rule[] = [
  {
    name: 'overlapping-ranges',
    severity: 'error',
    why: 'Where two ranges hold the same value, both may be right.',
    source: `flaw 18; ${HDR}`,
    find(item) {
      if (item.kind !== 'single') return [];
      const spans = item.choices.map(({ text }) => readSpan(text));
      return item.choices.flatMap((choice, index): LintFinding[] => {
        const place = spans.findIndex((other, at) => at < index && other !== null && overlaps(other, spans[index] ?? null));
        if (place < 0) return [];
        return [
          {
            path: choice.path,
            first: item.choices[place]?.path ?? choice.path,
            message: 'Two of the ranges have values in common. Make them follow one another.',
          },
        ];
      });
    },
  },
  {
    name: 'mixed-options',
    severity: 'warning',
    why: 'A number among words, or another kind of quantity, drops out at sight.',
    source: `flaw 16; ${HDR}`,
    find(item) {
      if (item.kind !== 'single') return [];
      const amounts = item.choices.map(({ text }) => readAmount(text));
      const known = amounts.filter((amount) => amount !== null);
      if (known.length === 0) return [];
      if (known.length < amounts.length && known.length !== 1 && amounts.length - known.length !== 1) return [];
      const odd = known.length === amounts.length ? -1 : amounts.findIndex((amount) => (amount === null) === known.length > 1);
      if (odd >= 0)
        return [
          {
            path: item.choices[odd]?.path ?? item.path,
            message: 'This option is of another kind than the rest: a number among words, or words among numbers.',
          },
        ];
      const units = new Set(known.map(({ unit }) => unit));
      return units.size === 1
        ? []
        : [
            {
              path: item.path,
              message: `The options are in different kinds of unit: ${[...units].map((unit) => unit || 'none').join(', ')}.`,
            },
          ];
    },
  },
  {
    name: 'numbers-out-of-order',
    severity: 'warning',
    why: 'Numbers are found sooner when they rise or fall.',
    source: `flaw 17; ${HDR}`,
    find(item) {
      if (item.kind !== 'single') return [];
      const amounts = item.choices.map(({ text }) => readAmount(text));
      if (amounts.some((amount) => amount === null) || new Set(amounts.map((amount) => amount?.unit)).size > 1) return [];
      const values = amounts.map((amount) => amount?.value ?? 0);
      const rises = values.every((value, index) => index === 0 || value > (values[index - 1] ?? 0));
      const falls = values.every((value, index) => index === 0 || value < (values[index - 1] ?? 0));
      if (!rises && !falls)
        return [
          {
            path: item.path,
            message: 'The options are numbers, and they neither rise nor fall. Put them in order and add "order: fixed".',
          },
        ];
      return item.ordered
        ? []
        : [{ path: item.path, message: 'The options are numbers in order, and they would be shuffled. Add "order: fixed".' }];
    },
  },
  {
    name: 'implausible-option',
    severity: 'warning',
    why: 'A number a thousand times off is chosen by nobody.',
    source: `flaw 20; ${HDR}`,
    find(item) {
      const found = soleKey(item);
      const key = found === null ? null : readAmount(found.key.text);
      if (found === null || key === null || key.value === 0) return [];
      return each(found.wrong, ({ text }) => {
        const amount = readAmount(text);
        if (amount === null || amount.unit !== key.unit) return null;
        const ratio = Math.abs(amount.value / key.value);
        return ratio > 1000 || (ratio < 0.001 && amount.value !== 0)
          ? 'This number is more than a thousand times off the key. Take one that a mistake really gives.'
          : null;
      });
    },
  },
];

/** A share of one value at the ends is no overlap: "up to 5 m" and "5 m to 10 m" is how people write. */
const overlaps = (a: Span, b: Span | null): boolean => b !== null && a.unit === b.unit && Math.max(a.from, b.from) < Math.min(a.to, b.to);
