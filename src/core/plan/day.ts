import type { MemoryModel } from '../memory.js';
import type { Random } from '../random.js';
import { arrange, type Taken } from './arrange.js';
import type { PlanCandidate, PlannedQuestion } from './candidate.js';
import { newQuota } from './pacing.js';
import { phaseOf, studyDaysLeft, type Phase, type PlanSettings } from './settings.js';
import { nextUnseen } from './unseen.js';
import { dueDayOf, gainByAsking, keepSafe, wantedRecall } from './value.js';

/**
 * What to ask in one sitting. Unseen questions have a reserved place in each day, paced so that the first half of the time left is
 * enough for all; of what was met, what is most likely forgotten comes first until a fortnight before the exam, and then what gains
 * most on the exam day (policy C3 of the scheduling study). Without an exam, what has become less likely than wanted is due. After
 * the exam what matters most is still asked now and then. Nothing here looks at days that were missed: what is left is spread anew.
 */

export interface Sitting {
  today: number;
  settings: PlanSettings;
  /** Seconds of answers given earlier today. */
  secondsToday: number;
  /** Questions that were met for the first time today. */
  metToday: number;
  /** Length of the sitting; null for just one question. */
  seconds: number | null;
}

interface Ranked {
  candidate: PlanCandidate;
  reason: 'fading' | 'gain' | 'early';
  /** The more, the sooner. */
  worth: number;
}

/** @returns the questions in the order to ask them, at least one unless everything was asked today already */
export function planSitting(pool: readonly PlanCandidate[], sitting: Sitting, model: MemoryModel, random: Random): PlannedQuestion[] {
  const phase = phaseOf(sitting.settings, sitting.today);
  const ranked = rank(pool, phase, sitting, model);
  const open = phase !== 'exam-day' && phase !== 'keeping-safe'; // to what is new
  const quota = open ? quotaOf(pool, sitting) : 0;
  if (sitting.seconds === null) return one(ranked, open ? nextUnseen(pool, 1, random) : [], quota > 0 && newIsBehind(pool, sitting));
  const spare = open ? Math.ceil(sitting.seconds / shortestAnswer) + 1 : 0;
  return arrange(fill(ranked, nextUnseen(pool, spare, random), quota, sitting.seconds));
}

/** Seconds; more questions than this allows never fit. */
const shortestAnswer = 20;

/** Those that may be asked again today, the most worthwhile first. */
function rank(pool: readonly PlanCandidate[], phase: Phase, { today, settings }: Sitting, model: MemoryModel): Ranked[] {
  const open = pool.filter(({ memory }) => memory !== null && memory.lastDay < today);
  const ranked = open.flatMap((candidate) => rankOne(candidate, phase, today, settings.examDay, model) ?? []);
  ranked.sort((a, b) => b.worth - a.worth || a.candidate.questionId - b.candidate.questionId);
  return phase === 'keeping-safe' ? onePerObjective(ranked) : ranked;
}

/** Above this chance to recall, and below this gain, nothing presses: such a question is asked only where there is time to spare. */
const firmRecall = 0.95;
const leastGain = 0.005;

function rankOne(candidate: PlanCandidate, phase: Phase, today: number, examDay: number | null, model: MemoryModel): Ranked | null {
  const { memory, paperWeight, weight, surelyWrong } = candidate;
  if (memory === null) return null;
  const recall = model.recall(memory, today);
  // A mistake that was given as sure comes before all else.
  const first = surelyWrong ? 10 : 0;
  switch (phase) {
    case 'building':
    case 'exam-day':
      return { candidate, reason: recall > firmRecall && !surelyWrong ? 'early' : 'fading', worth: first + paperWeight * (1 - recall) };
    case 'sharpening': {
      const gain = gainByAsking(memory, today, examDay ?? today, model);
      return { candidate, reason: gain < leastGain && !surelyWrong ? 'early' : 'gain', worth: first + paperWeight * gain };
    }
    case 'keeping-safe':
      if (weight < 3 || recall >= keepSafe.recall || today - memory.lastDay < keepSafe.apart) return null;
      return { candidate, reason: 'fading', worth: first + 1 - recall };
    case 'no-exam': {
      const lacking = (wantedRecall[weight] ?? 0.87) - recall;
      // Due by the day that people are told, which is rounded: what is said to have come back is asked.
      const due = lacking > 0 || dueDayOf(memory, weight, null, model) <= today;
      return { candidate, reason: due || surelyWrong ? 'fading' : 'early', worth: first + lacking };
    }
  }
}

function onePerObjective(ranked: readonly Ranked[]): Ranked[] {
  const seen = new Set<string>();
  return ranked.filter(({ candidate: { objective } }) => !seen.has(objective) && seen.add(objective));
}

/** How many unseen questions this sitting should hold: its share of what is left of the day's. */
function quotaOf(pool: readonly PlanCandidate[], { today, settings, secondsToday, metToday, seconds }: Sitting): number {
  const unseen = pool.filter(({ memory }) => memory === null).length;
  if (unseen === 0) return 0;
  const perQuestion = pool.reduce((sum, candidate) => sum + candidate.seconds, 0) / pool.length;
  // Who goes on beyond the minutes of the day makes the day longer.
  const day = Math.max(settings.minutes * 60, secondsToday + (seconds ?? perQuestion));
  const left = newQuota(unseen + metToday, studyDaysLeft(settings, today), Math.floor(day / perQuestion)) - metToday;
  if (left <= 0) return 0;
  return Math.ceil((left * (seconds ?? perQuestion)) / (day - secondsToday));
}

function fill(ranked: readonly Ranked[], unseen: readonly PlanCandidate[], quota: number, budget: number): Taken {
  const taken: Taken = { again: [], fresh: [] };
  let used = 0;
  const room = (): boolean => used < budget || used === 0;
  const take = (list: PlannedAs[], candidate: PlanCandidate, reason: PlannedQuestion['reason']): void => {
    list.push({ candidate, reason });
    used += candidate.seconds;
  };
  for (const candidate of unseen.slice(0, quota)) if (room()) take(taken.fresh, candidate, 'new');
  for (const { candidate, reason } of ranked) if (reason !== 'early' && room()) take(taken.again, candidate, reason);
  for (const candidate of unseen.slice(quota)) if (room()) take(taken.fresh, candidate, 'new');
  for (const { candidate, reason } of ranked) if (reason === 'early' && room()) take(taken.again, candidate, reason);
  return taken;
}

type PlannedAs = Taken['again'][number];

/** Whoever studies one question at a time meets new ones too: they have their place once something was answered today. */
function newIsBehind(pool: readonly PlanCandidate[], { secondsToday, metToday }: Sitting): boolean {
  const perQuestion = pool.reduce((sum, candidate) => sum + candidate.seconds, 0) / pool.length;
  return metToday < (secondsToday / perQuestion) * newAmongSingle;
}

/** Share of new ones where questions are asked one at a time. */
const newAmongSingle = 0.3;

/** Just one: what was met, if any of it presses and new ones are not behind; else something new; else whatever there is. */
function one(ranked: readonly Ranked[], [fresh]: readonly PlanCandidate[], behind: boolean): PlannedQuestion[] {
  const pressing = ranked.find(({ reason }) => reason !== 'early');
  if (fresh !== undefined && (behind || pressing === undefined)) return [{ questionId: fresh.questionId, reason: 'new' }];
  const best = pressing ?? ranked[0];
  return best === undefined ? [] : [{ questionId: best.candidate.questionId, reason: best.reason }];
}
