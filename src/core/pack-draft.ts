import type { Drawing } from './drawing.js';
import type { Family } from './families/schema.js';
import type { Pack, PackHead } from './pack.js';
import type { FixedQuestion } from './questions/schema.js';
import type { Skill } from './skill.js';
import type { Blueprint, Caution, Objective, Source, Topic } from './syllabus.js';

/** Keys and positions that lead to a part of a pack, such as `['questions', 3, 'options', 1, 'text']`. */
export type Path = readonly (string | number)[];

export interface PackFault {
  level: 'error' | 'warning';
  rule: string;
  path: Path;
  message: string;
  /** Of something written twice: where it was written first. */
  first?: Path;
}

/** An entry as written, and what the schema made of it: null when it was refused there, so that its references are still checked. */
export interface DraftEntry<T> {
  raw: unknown;
  whole: T | null;
}

/** A pack whose parts need not all be sound. */
export interface PackDraft {
  head: PackHead | null;
  topics: DraftEntry<Topic>[];
  objectives: DraftEntry<Objective>[];
  cautions: DraftEntry<Caution>[];
  sources: DraftEntry<Source>[];
  questions: DraftEntry<FixedQuestion>[];
  families: DraftEntry<Family>[];
  drawings: DraftEntry<Drawing>[];
  blueprints: DraftEntry<Blueprint>[];
  skills: DraftEntry<Skill>[];
}

export type ListKind = Exclude<keyof PackDraft, 'head'>;
export const listKinds: readonly ListKind[] = [
  'topics',
  'objectives',
  'cautions',
  'sources',
  'questions',
  'families',
  'drawings',
  'blueprints',
  'skills',
];

export function draftOf(pack: Pack): PackDraft {
  const entries = <T>(list: T[]): DraftEntry<T>[] => list.map((whole) => ({ raw: whole, whole }));
  return {
    head: pack.head,
    topics: entries(pack.topics),
    objectives: entries(pack.objectives),
    cautions: entries(pack.cautions),
    sources: entries(pack.sources),
    questions: entries(pack.questions),
    families: entries(pack.families),
    drawings: entries(pack.drawings),
    blueprints: entries(pack.blueprints),
    skills: entries(pack.skills),
  };
}

export const idKeys: Readonly<Record<ListKind, string>> = {
  topics: 'code',
  objectives: 'code',
  cautions: 'id',
  sources: 'id',
  questions: 'id',
  families: 'id',
  drawings: 'id',
  blueprints: 'id',
  skills: 'id',
};
/** The name of one entry of a list. */
export const oneOf: Readonly<Record<ListKind, string>> = {
  topics: 'topic',
  objectives: 'objective',
  cautions: 'caution',
  sources: 'source',
  questions: 'question',
  families: 'family',
  drawings: 'drawing',
  blueprints: 'blueprint',
  skills: 'skill',
};

/** The text under a key; empty when there is none. */
export function textAt(raw: unknown, key: string): string {
  return textsAt(raw, [key])[0]?.text ?? '';
}

/** The texts at the end of a way through data of any shape; what is not there or not a text is passed over. */
export function textsAt(value: unknown, way: readonly string[]): { path: Path; text: string }[] {
  const [step, ...rest] = way;
  if (step === undefined) return typeof value === 'string' ? [{ path: [], text: value }] : [];
  if (value === null || typeof value !== 'object') return [];
  const steps: (string | number)[] =
    step !== '*' ? (Object.hasOwn(value, step) ? [step] : []) : Array.isArray(value) ? [...value.keys()] : Object.keys(value);
  return steps.flatMap((key) =>
    textsAt((value as Record<string | number, unknown>)[key], rest).map(({ path, text }) => ({ path: [key, ...path], text })),
  );
}
