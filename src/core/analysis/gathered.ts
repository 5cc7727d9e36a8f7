import { wilsonInterval } from '../outlook/wilson.js';
import { certainties, type RecordedCertainty } from '../questions/schema.js';
import { fisherInterval, type Interval } from './correlation.js';
import { correlationWithRest, pooled, type RestGroup } from './first-sight.js';

/**
 * One question's figures from the record of answers. Only each person's first answer judges a question, since repeated practice raises
 * what is right and answers of one person hang together; later ones are counted apart. An answer that says "I do not know it" is not
 * right, and is no option.
 */

/** People who answered alike, as the record gives them. */
export interface Tally {
  /** Of first answers; otherwise of later ones, which are not told apart further. */
  first: boolean;
  revision: number;
  /** What was chosen: see `Wording`; nothing for "I do not know it"; null for an answer with parts, and for later ones. */
  choice: string | null;
  certainty: RecordedCertainty | null;
  right: boolean;
  answers: number;
  /** Those who have answered enough other questions; null when nobody has. */
  rest: RestGroup | null;
  /** How many of these are among the 27 % with the most of the rest right, among the 27 % with the least, and in both. */
  upper: number;
  lower: number;
  both: number;
}

/** What one revision offers to choose. */
export interface Wording {
  revision: number;
  /** As the record of answers names them: places in the pack for options, names for the tell-tales of a family. */
  values: readonly string[];
  /** What is the same from revision to revision: an option's text, a place's part, a tell-tale's name. */
  names: readonly string[];
  /** The value of the right one; null where a number is typed, or the answer has parts. */
  key: string | null;
}

export type ByCertainty = Readonly<Record<RecordedCertainty, number>>;

export interface ChoiceFigures {
  /** Of the present wording; or one of `nothing`, `other`, `rightNumber` and `earlier`. */
  value: string;
  key: boolean;
  people: number;
  certainty: ByCertainty;
  /** With the rest. */
  rest: number | null;
  restInterval: Interval | null;
  upper: number;
  lower: number;
}

export interface GatheredFigures {
  /** People who have answered it. */
  n: number;
  /** Of these, right at first sight. */
  right: number;
  /** Wilson's 95 %. */
  facility: Interval | null;
  /** Of these, with enough answers to other questions. */
  held: number;
  itemRest: number | null;
  /** Fisher's 95 %. */
  itemRestInterval: Interval | null;
  /** The 27 % who have the most of the rest right, and the 27 % who have the least, ties included; null where both are the same people. */
  groups: { upper: Share; lower: Share } | null;
  /** What was offered and what else was given; empty where answers have parts. */
  choices: ChoiceFigures[];
  certainty: Readonly<Record<RecordedCertainty, Share>>;
  /** Answers after the first. */
  later: Share;
}

export interface Share {
  right: number;
  of: number;
}

/** Said not to be known. What is ours beside what packs name begins with a sign that no name begins with; the statement that counts says the same. */
export const nothing = '';
/** A wrong number without a name. */
export const other = '+other';
/** A right number, where no option is the key. */
export const rightNumber = '+right';
/** Something that the present wording does not offer. */
export const earlier = '+earlier';

/**
 * @param wordings those of the revisions that count, the present one among them
 * @param present the present revision
 */
export function gathered(tallies: readonly Tally[], wordings: readonly Wording[], present: number): GatheredFigures {
  const first = tallies.filter((tally) => tally.first).map((tally) => asNow(tally, wordings, present));
  const right = first.filter((tally) => tally.right);
  const n = answersOf(first);
  const all = restOf(first);
  const held = all?.people ?? 0;
  const itemRest = correlationWithRest(restOf(right), all);
  return {
    n,
    right: answersOf(right),
    facility: wilsonInterval(answersOf(right), n),
    held,
    itemRest,
    itemRestInterval: fisherInterval(itemRest, held),
    groups: groupsOf(first),
    choices: choicesOf(first, all, wordings.find(({ revision }) => revision === present) ?? null),
    certainty: byCertainty((certainty) => shareOf(first.filter((tally) => tally.certainty === certainty))),
    later: shareOf(tallies.filter((tally) => !tally.first)),
  };
}

/**
 * An answer to an earlier revision that asked the same, said in the present wording: its options may stand in another order now, and a
 * corrected key makes right what was marked wrong.
 */
function asNow(tally: Tally, wordings: readonly Wording[], present: number): Tally {
  const [then, now] = [tally.revision, present].map((at) => wordings.find(({ revision }) => revision === at));
  if (tally.choice === null || tally.choice === nothing || now === undefined || now.key === null) return tally;
  const name = then?.names[then.values.indexOf(tally.choice)];
  const value = name === undefined ? undefined : now.values[now.names.indexOf(name)];
  return value === undefined ? { ...tally, choice: earlier } : { ...tally, choice: value, right: value === now.key };
}

function choicesOf(first: readonly Tally[], all: RestGroup | null, wording: Wording | null): ChoiceFigures[] {
  if (wording === null || first.every(({ choice }) => choice === null)) return [];
  const found = first.flatMap(({ choice }) => choice ?? []);
  return [...new Set([...wording.values, ...found])].map((value): ChoiceFigures => {
    const those = first.filter(({ choice }) => choice === value);
    const rest = correlationWithRest(restOf(those), all);
    return {
      value,
      key: value === wording.key || (wording.key === null && value === rightNumber),
      people: answersOf(those),
      certainty: byCertainty((certainty) => answersOf(those.filter((tally) => tally.certainty === certainty))),
      rest,
      restInterval: fisherInterval(rest, all?.people ?? 0),
      upper: those.reduce((sum, { upper }) => sum + upper, 0),
      lower: those.reduce((sum, { lower }) => sum + lower, 0),
    };
  });
}

function groupsOf(first: readonly Tally[]): GatheredFigures['groups'] {
  const share = (which: 'upper' | 'lower'): Share => ({
    right: first.reduce((sum, tally) => sum + (tally.right ? tally[which] : 0), 0),
    of: first.reduce((sum, tally) => sum + tally[which], 0),
  });
  const [upper, lower] = [share('upper'), share('lower')];
  return upper.of === 0 || lower.of === 0 || first.some(({ both }) => both > 0) ? null : { upper, lower };
}

const restOf = (tallies: readonly Tally[]): RestGroup | null => pooled(tallies.flatMap(({ rest }) => rest ?? []));
const answersOf = (tallies: readonly Tally[]): number => tallies.reduce((sum, { answers }) => sum + answers, 0);
const shareOf = (tallies: readonly Tally[]): Share => ({ right: answersOf(tallies.filter(({ right }) => right)), of: answersOf(tallies) });
const byCertainty = <T>(of: (certainty: RecordedCertainty) => T): Record<RecordedCertainty, T> => {
  const [sure, fairly, guessing] = certainties.map(of) as [T, T, T];
  return { sure, fairly, guessing, unsaid: of('unsaid') };
};
