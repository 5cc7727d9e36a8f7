import { soleKey, type Item, type LintFinding, type PackRule, type PackView } from './item.js';
import { lettersIn } from './words.js';

/** Rules about where the keys of a pack stand and how long they are. */

const HDR = 'Haladyna, Downing and Rodriguez 2002';

export const keyRules: PackRule[] = [
  {
    name: 'key-positions',
    severity: 'warning',
    why: 'Writers favour the middle places. Shown options are shuffled, but printed drafts and other programs keep the order.',
    source: `flaw 23; ${HDR}; chi-square, p below 0.01`,
    findAll(pack) {
      const places = keyPlaces(pack);
      if (places.length < 20) return [];
      const counts = [0, 1, 2, 3].map((place) => places.filter(({ at }) => at === place).length);
      const expected = places.length / 4;
      const chiSquare = counts.reduce((sum, count) => sum + (count - expected) ** 2 / expected, 0);
      // 99 % point of chi-square with three degrees of freedom (any table of the distribution).
      if (chiSquare <= 11.34) return [];
      const message = `The key is the first, second, third and fourth of four options ${counts.join(', ')} times. Spread it evenly.`;
      return [{ path: places[0]?.item.path ?? [], message }];
    },
  },
  {
    name: 'key-run',
    severity: 'warning',
    why: 'The same place many times running, or a pattern, is noticed.',
    source: `flaw 24; ${HDR}; seven running, since five come about once among 300 questions by chance`,
    findAll(pack) {
      const places = keyPlaces(pack);
      return places.flatMap(({ item, at }, index): LintFinding[] => {
        const run = places.slice(Math.max(0, index - 6), index + 1);
        if (run.length === 7 && run.every((other) => other.at === at) && places[index + 1]?.at !== at)
          return [{ path: item.path, message: `The key has been in place ${at + 1} seven times running. Change some.` }];
        const period = [2, 3, 4].find((step) => index >= 11 && repeats(places, index, step));
        return period === undefined
          ? []
          : [
              {
                path: item.path,
                message: `The places of the keys have repeated every ${period} questions, twelve times running. Mix them.`,
              },
            ];
      });
    },
  },
  {
    name: 'longest-keys',
    severity: 'warning',
    why: 'Where the key is the longest option far more often than by chance, "take the longest" passes the paper.',
    source: `flaw 1 over a pack; ${HDR}; lower end of the 95 % Wilson interval above a third`,
    findAll(pack) {
      const keys = pack.items.flatMap((item) => soleKey(item) ?? []);
      if (keys.length < 20) return [];
      const longest = keys.filter(({ key, wrong }) => wrong.every(({ text }) => lettersIn(text) < lettersIn(key.text))).length;
      if (wilsonLow(longest, keys.length) <= 1 / 3) return [];
      return [
        {
          path: pack.items[0]?.path ?? [],
          message: `The key is the longest option in ${longest} of ${keys.length} questions. Shorten keys, or write longer wrong options.`,
        },
      ];
    },
  },
];

/** The place of the key in each question with four options that the author ordered. */
const keyPlaces = (pack: PackView): { item: Item; at: number }[] =>
  pack.items
    .filter((item) => item.kind === 'single' && !item.ordered && item.choices.length === 4)
    .map((item) => ({ item, at: item.choices.findIndex(({ key }) => key) }));

function repeats(places: { at: number }[], index: number, step: number): boolean {
  const last = places.slice(index - 11, index + 1).map(({ at }) => at);
  return (
    new Set(last).size > 1 &&
    last.every((at, place) => place < step || at === last[place - step]) &&
    places[index + 1]?.at !== last[12 - step]
  );
}

/** Lower end of the 95 % interval of Wilson 1927 for a share. */
function wilsonLow(count: number, n: number): number {
  const z = 1.96;
  const share = count / n;
  return (share + (z * z) / (2 * n) - z * Math.sqrt((share * (1 - share)) / n + (z * z) / (4 * n * n))) / (1 + (z * z) / n);
}
