import type { Draw } from '../families/draw.js';
import type { Drawing, DrawingPart } from '../drawing.js';
import type { Mark, ShownOption } from '../marking.js';

/** What somebody is asked to do, of whatever kind, in the order of one seed; and what came back. */

export type Task = ChoiceTask | NumberTask | SeveralTask | OrderTask | PairsTask | PlaceTask;

/** One out of a list: a single best answer, or a family that offers values. */
export interface ChoiceTask {
  kind: 'choice';
  options: ShownOption[];
  /** Null for a fixed question. */
  draw: Draw | null;
}

export interface NumberTask {
  kind: 'number';
  draw: Draw;
}

export interface ShownStatement {
  /** Its place in the pack, which does not tell whether it holds. */
  place: number;
  text: string;
  holds: boolean;
  why: string;
}

export interface SeveralTask {
  kind: 'several';
  statements: ShownStatement[];
}

export interface ShownStep {
  /** Its place in the right order. It must not reach the page before the answer. */
  place: number;
  /** Steps of one rank may change places. */
  rank: number;
  text: string;
  why: string;
}

export interface OrderTask {
  kind: 'order';
  /** As shown: never in a right order. */
  steps: ShownStep[];
}

export interface ShownLeft {
  /** Its place in the pack. */
  place: number;
  text: string;
  /** The right one it goes with, by that one's number in the pack. */
  right: number;
  why: string;
}

export interface ShownRight {
  /** Its number in the pack, which would tell what it goes with and must not reach the page before the answer. */
  place: number;
  text: string;
  why: string;
}

export interface PairsTask {
  kind: 'pairs';
  lefts: ShownLeft[];
  rights: ShownRight[];
}

export interface ShownPlace {
  /** Its place in the pack, which does not tell which is the key. */
  value: string;
  text: string;
  part: DrawingPart;
  key: boolean;
  why: string;
}

export interface PlaceTask {
  kind: 'place';
  drawing: Drawing;
  places: ShownPlace[];
}

/** The fields of an answer's form, as they came. */
export interface Entry {
  option: string;
  value: string;
  /** The fields of the parts of a question, by their numbers in the form. */
  parts: readonly string[];
}

export const emptyEntry: Entry = { option: '', value: '', parts: [] };

/** An answer as it is kept, and its mark; or why it cannot be marked. */
export type Reading = { given: string; mark: Mark } | { why: string; /** The id of the control that lacks something. */ at?: string };

/** A mark without what only numbers have. */
export const plainMark = (right: boolean, score: number): Mark => ({ right, score, tellTales: [], slip: null });

const letters = 'ABCDEFGHIJ';
export const letterOf = (index: number): string => letters[index] ?? '?';

/** "A", "A and B", "A, B and C". */
export function listWords(words: readonly string[]): string {
  return words.length < 2 ? words.join('') : `${words.slice(0, -1).join(', ')} and ${words.at(-1) ?? ''}`;
}

/** Whether an answer can be partly right. */
export const hasParts = (task: Task): boolean => task.kind === 'several' || task.kind === 'order' || task.kind === 'pairs';
