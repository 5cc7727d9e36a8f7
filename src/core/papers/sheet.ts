import type { Drawing } from '../drawing.js';
import { draw, fourOptions, type CompiledFamily } from '../families/draw.js';
import { drawOptions } from '../marking.js';
import type { FixedQuestion } from '../questions/schema.js';
import { randomFrom, type Random } from '../random.js';
import { showFixed } from '../tasks/index.js';
import { letterOf, type ChoiceTask, type PlaceTask } from '../tasks/task.js';

/**
 * A question as a paper asks it: one letter answers it, on a screen as on a printed sheet. So numbers are not typed but chosen from
 * four, and the kinds of question that take more than one letter are left to rounds.
 */

export type SheetTask = ChoiceTask | PlaceTask;

/** The most letters a question may have, A to F. */
export const mostLetters = 6;

/** Kinds that one letter answers. */
export const paperKinds: ReadonlySet<string> = new Set(['single', 'place', 'numeric']);

export function sheetFixed(question: FixedQuestion, seed: number, drawing: Drawing | null): SheetTask {
  const task = showFixed(question, seed, drawing);
  if (task.kind !== 'choice' && task.kind !== 'place') throw new Error(`question ${question.id} cannot be answered with one letter`);
  return task;
}

/** @returns null when the draw of this seed has too few mistakes to choose from */
export function sheetFamily(compiled: CompiledFamily, seed: number): (ChoiceTask & { stem: string; caution: string | undefined }) | null {
  const drawn = draw(compiled, seed);
  const options = drawOptions(drawn) ?? drawOptions(drawn, fourOptions(drawn));
  if (options === null) return null;
  return { kind: 'choice', options, draw: drawn, stem: drawn.stem, caution: drawn.caution };
}

const seedTries = 60;

/** A seed whose draw can be put on a paper; null when none of 60 can. */
export function sheetSeed(compiled: CompiledFamily, random: Random): number | null {
  for (let tried = 0; tried < seedTries; tried += 1) {
    const seed = random.below(2 ** 31);
    if (sheetFamily(compiled, seed) !== null) return seed;
  }
  return null;
}

/** Whether a family can be put on a paper at all. */
export const fitsSheet = (compiled: CompiledFamily): boolean => sheetSeed(compiled, randomFrom(`sheet ${compiled.variant.id}`)) !== null;

const valuesOf = (task: SheetTask): readonly { value: string; key: boolean }[] => (task.kind === 'choice' ? task.options : task.places);

/** How many letters it has. */
export const lettersOf = (task: SheetTask): string[] => valuesOf(task).map((_, index) => letterOf(index));

/** The letter of the key. */
export const keyLetter = (task: SheetTask): string => letterOf(valuesOf(task).findIndex(({ key }) => key));

/** What a letter stands for, as the record of answers keeps it; null for a letter that the question does not have. */
export const valueOfLetter = (task: SheetTask, letter: string): string | null =>
  letter.length === 1 ? (valuesOf(task)[letter.charCodeAt(0) - 65]?.value ?? null) : null;
