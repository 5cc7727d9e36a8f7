import type { Blueprint, Region } from '../core/syllabus.js';

/** What the tables of papers hold, as the program sees it. */

export interface PaperHead {
  paperId: string;
  title: string;
  /** Slug and title of its pack, and the version it had then. */
  pack: string;
  packTitle: string;
  packVersion: string;
  blueprint: Blueprint;
  region: Region;
  madeBy: number | null;
  madeAt: Date;
  /** Null for a candidate's own. */
  classId: number | null;
  className: string | null;
  versions: number;
  opensAt: Date | null;
  closesAt: Date | null;
}

export interface ItemRow {
  position: number;
  questionId: number;
  revision: number;
  seed: number;
}

export interface SittingRow {
  sittingId: string;
  version: number;
  personId: number | null;
  guestName: string | null;
  way: 'screen' | 'sheet';
  extraTime: number;
  startedAt: Date | null;
  deadlineAt: Date | null;
  handedInAt: Date | null;
  right: number | null;
  passed: boolean | null;
  chanceLow: number | null;
  chanceHigh: number | null;
  firstRight: number | null;
  remarkedAt: Date | null;
}

export interface SheetRow {
  position: number;
  choice: string | null;
  again: boolean;
  savedAt: Date;
  right: boolean | null;
  firstRight: boolean | null;
}
