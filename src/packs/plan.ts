import type { FixedKind } from '../core/questions/schema.js';
import type { AroundChange } from './around.js';

/** What loading a pack would change, worked out before anything is changed. */

export interface PackPlan {
  state: 'new' | 'unchanged' | 'changes' | 'refused';
  /** The version that is there now. */
  before: string | null;
  version: string;
  added: string[];
  /** New revisions. `keeps`: what people remember of it still counts. */
  changed: { code: string; from: number; to: number; keeps: boolean }[];
  /** Retired once, and back. */
  returned: string[];
  retired: string[];
  /** What changes round about the questions. */
  around: AroundChange[];
  /** How the version compares with the one that is there. */
  step: 'newer' | 'same' | 'older';
  /** Why nothing can be loaded, by question. */
  refused: { code: string; why: Refusal }[];
}

export type Refusal = 'same-revision' | 'revision-down' | 'other-kind';

export const refusalWords: Readonly<Record<Refusal, string>> = {
  'same-revision': 'its text changed and its revision did not: raise the revision',
  'revision-down': 'its revision is lower than the one that is here: take the pack’s newest files',
  'other-kind': 'it says that it asks the same, and it is of another kind: take "sameSince" out, or give it a new id',
};

/** A question as the database knows it. */
export interface KnownQuestion {
  code: string;
  kind: string;
  currentRevision: number;
  retired: boolean;
  /** Of the revision that the new one bears; null when that revision is new. */
  hash: string | null;
}

export function planOf(
  before: string | null,
  version: string,
  questions: readonly QuestionToWrite[],
  known: readonly KnownQuestion[],
): PackPlan {
  const byCode = new Map(known.map((question) => [question.code, question]));
  const offered = new Set(questions.map(({ code }) => code));
  const refused = questions.flatMap((question) => {
    const why = refusalOf(question, byCode.get(question.code));
    return why === null ? [] : [{ code: question.code, why }];
  });
  const changed = questions.flatMap(({ code, revision, sameSince }) => {
    const from = byCode.get(code)?.currentRevision;
    if (from === undefined || from >= revision) return [];
    return [{ code, from, to: revision, keeps: sameSince !== null && sameSince <= from }];
  });
  return {
    state: refused.length > 0 ? 'refused' : before === null ? 'new' : 'changes',
    before,
    version,
    added: questions.filter(({ code }) => !byCode.has(code)).map(({ code }) => code),
    changed,
    returned: questions.filter(({ code }) => byCode.get(code)?.retired === true).map(({ code }) => code),
    retired: known.filter(({ code, retired }) => !retired && !offered.has(code)).map(({ code }) => code),
    around: [],
    step: stepOf(before, version),
    refused,
  };
}

function stepOf(before: string | null, version: string): PackPlan['step'] {
  if (before === null) return 'newer';
  const [from, to] = [before, version].map((text) => text.split('.').map(Number)) as [number[], number[]];
  const at = from.findIndex((number, index) => number !== to[index]);
  if (at < 0) return 'same';
  return (to[at] ?? 0) > (from[at] ?? 0) ? 'newer' : 'older';
}

function refusalOf(question: QuestionToWrite, known: KnownQuestion | undefined): Refusal | null {
  if (known === undefined) return null;
  if (question.revision < known.currentRevision) return 'revision-down';
  if (known.hash !== null && known.hash !== question.hash) return 'same-revision';
  const says = question.sameSince !== null && question.sameSince <= known.currentRevision && question.revision > known.currentRevision;
  return says && question.kind !== known.kind ? 'other-kind' : null;
}

/** A question of a pack as it is written down. */
export interface QuestionToWrite {
  code: string;
  kind: FixedKind | 'numeric';
  objective: string;
  regions: string[];
  revision: number;
  body: unknown;
  hash: string;
  /** The code of the drawing it shows. */
  drawing: string | null;
  /** The first revision that asked the same. */
  sameSince: number | null;
}
