import type { QuestionState } from '../core/evenings/steps.js';
import type { Region } from '../core/syllabus.js';

/** What the tables of class evenings hold, as the program sees it. */

export interface EveningHead {
  eveningId: string;
  classId: number;
  className: string;
  /** Members of the class now. */
  members: number;
  title: string;
  region: Region;
  madeAt: Date;
  movedAt: Date;
  /** The question before the class, from 1 on; 0 before the first. */
  place: number;
  questions: number;
  change: number;
  endedAt: Date | null;
}

export interface EveningItemRow {
  position: number;
  questionId: number;
  revision: number;
  seed: number;
  state: QuestionState;
  /** By letter; empty where none were counted. */
  hands: number[];
}

/** What somebody chose on a phone. */
export interface OwnAnswer {
  position: number;
  choice: string;
  /** Null until it is marked, and from then on it stays. */
  right: boolean | null;
  /** Its line in the record of answers. */
  token: string | null;
}
