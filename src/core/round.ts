import type { Memory, MemoryModel } from './memory.js';
import { shuffled, type Random } from './random.js';

/** What to ask next: due questions first, unseen ones in reserved places, topics mixed. */

export interface RoundCandidate {
  questionId: number;
  objective: string;
  topic: string;
  /** 1 to 3: how much it matters. */
  weight: number;
  memory: Memory | null;
  dueDay: number | null;
  /** Was sure and wrong when last answered. */
  surelyWrong: boolean;
  /** About how long an answer takes. */
  seconds: number;
}

export interface Planned {
  questionId: number;
  reason: 'due' | 'new' | 'early';
}

/** Time for one answer with its reading: our own assumption until a candidate's own times are known (no source). */
export const secondsFor = { options: 40, number: 90 } as const;

/** Share of a round kept for unseen questions, so that what is due cannot crowd them out. */
export const newShare = 0.3;

type Sorted = Record<Planned['reason'], RoundCandidate[]>;

/**
 * @param minutes length of the round; 0 asks just one question
 * @returns the questions in the order to ask them, at least one unless everything was asked today already
 */
export function planRound(pool: readonly RoundCandidate[], today: number, minutes: number, model: MemoryModel, random: Random): Planned[] {
  const sorted = sortPool(pool, today, model, random);
  return arrange(fill(sorted, minutes), minutes === 0 ? 1 : Infinity);
}

/** How many would be asked, and how many of them are due, without drawing anything. */
export function dueCount(pool: readonly RoundCandidate[], today: number): { due: number; unseen: number } {
  const due = pool.filter((c) => c.dueDay !== null && c.dueDay <= today && c.memory?.lastDay !== today).length;
  return { due, unseen: pool.filter((c) => c.memory === null).length };
}

function sortPool(pool: readonly RoundCandidate[], today: number, model: MemoryModel, random: Random): Sorted {
  const open = pool.filter((c) => c.memory?.lastDay !== today);
  const recall = new Map(open.map((c) => [c, c.memory === null ? 0 : model.recall(c.memory, today)]));
  const byRecall = (a: RoundCandidate, b: RoundCandidate) =>
    Number(b.surelyWrong) - Number(a.surelyWrong) || (recall.get(a) ?? 0) - (recall.get(b) ?? 0) || a.questionId - b.questionId;
  const met = open.filter((c) => c.memory !== null);
  return {
    due: met.filter((c) => c.dueDay !== null && c.dueDay <= today).sort(byRecall),
    early: met.filter((c) => c.dueDay === null || c.dueDay > today).sort(byRecall),
    new: unseenInOrder(pool, random),
  };
}

/** Topics take turns, the least seen first; within a topic what matters most comes first and an objective waits for its fellows. */
function unseenInOrder(pool: readonly RoundCandidate[], random: Random): RoundCandidate[] {
  const seen = new Map<string, number>();
  for (const c of pool) if (c.memory !== null) for (const key of [c.topic, c.objective]) seen.set(key, (seen.get(key) ?? 0) + 1);
  const rest = shuffled(
    pool.filter((c) => c.memory === null),
    random,
  );
  const ordered: RoundCandidate[] = [];
  while (rest.length > 0) {
    let best = 0;
    for (let i = 1; i < rest.length; i += 1) if (precedes(rest[i] as RoundCandidate, rest[best] as RoundCandidate, seen)) best = i;
    const [next] = rest.splice(best, 1) as [RoundCandidate];
    for (const key of [next.topic, next.objective]) seen.set(key, (seen.get(key) ?? 0) + 1);
    ordered.push(next);
  }
  return ordered;
}

function precedes(a: RoundCandidate, b: RoundCandidate, seen: ReadonlyMap<string, number>): boolean {
  const of = (key: string) => seen.get(key) ?? 0;
  return (of(a.topic) - of(b.topic) || of(a.objective) - of(b.objective) || b.weight - a.weight) < 0;
}

/** Takes from the sorted lists until the time is used: due and new by their shares, then whatever is left. */
function fill(sorted: Sorted, minutes: number): Sorted {
  const budget = minutes * 60;
  const taken: Sorted = { due: [], new: [], early: [] };
  let used = 0;
  const take = (kind: Planned['reason'], limit: number) => {
    while (used < limit || used === 0) {
      const next = sorted[kind][taken[kind].length];
      if (next === undefined) return;
      taken[kind].push(next);
      used += next.seconds;
      if (minutes === 0) return;
    }
  };
  take('due', budget * (1 - newShare));
  if (minutes === 0 && used > 0) return taken;
  take('new', budget);
  if (minutes === 0 && used > 0) return taken;
  take('due', budget);
  take('early', budget);
  return taken;
}

/** New ones spread evenly between the others; the same topic never twice in a row while another is left. */
function arrange(taken: Sorted, most: number): Planned[] {
  const old = [...taken.due.map((c) => ({ c, reason: 'due' as const })), ...taken.early.map((c) => ({ c, reason: 'early' as const }))];
  const fresh = taken.new.map((c) => ({ c, reason: 'new' as const }));
  const total = old.length + fresh.length;
  const plan: { c: RoundCandidate; reason: Planned['reason'] }[] = [];
  for (let i = 0, placed = 0; i < total; i += 1) {
    const wantsNew = old.length === 0 || (fresh.length > 0 && placed < Math.floor(((i + 1) * taken.new.length) / total));
    const next = pull(wantsNew ? [fresh, old] : [old, fresh], plan.at(-1)?.c);
    if (next.reason === 'new') placed += 1;
    plan.push(next);
  }
  return plan.slice(0, most).map(({ c, reason }) => ({ questionId: c.questionId, reason }));
}

type Place = { c: RoundCandidate; reason: Planned['reason'] };

/** The first of another topic in the preferred list, else in the other; else the first of another objective; else the first there is. */
function pull(lists: Place[][], before: RoundCandidate | undefined): Place {
  const tests = [(p: Place) => p.c.topic !== before?.topic, (p: Place) => p.c.objective !== before?.objective, () => true];
  for (const test of tests) {
    for (const list of lists) {
      const index = list.findIndex(test);
      if (index >= 0) return list.splice(index, 1)[0] as Place;
    }
  }
  throw new Error('nothing left to arrange');
}
