import type { FieldPart, TitleField } from '../core/page-parts.js';

/** What the pages for entering results show, exactly. */

export interface EnterPage {
  view: 'papers/enter';
  data: {
    csrf: string;
    title: string;
    paperHref: string;
    headline: string;
    /** What was saved last, in words. */
    said: { look: 'yes' | 'must'; word: string; note: string } | null;
    fault: { word: string; why: string; target: string } | null;
    action: string;
    /** The sheet that is being corrected; null for a new one. */
    correcting: { sitting: string; note: string; backHref: string } | null;
    candidates: { value: string; text: string; chosen: boolean }[];
    candidateWhy: string | null;
    name: FieldPart;
    version: FieldPart;
    /** The version that was doubted; null where none was. */
    sure: string | null;
    versionHint: string;
    letters: FieldPart;
    lettersHint: string;
    /** How many letters each question has: a figure a question, versions parted by spaces. */
    counts: string;
    /** Where the form that removes a sheet without an account is sent. */
    remove: { action: string; nameAction: string; name: string } | null;
    csvHref: string;
    resultsHref: string;
    left: string;
    rows: EnteredPart[];
    titleBlock: TitleField[];
  };
}

export interface EnteredPart {
  name: string;
  note: string;
  version: number;
  mark: string;
  passed: string;
  when: string;
  correctHref: string;
  /** Null for somebody with an account, whose memory has learnt from it. */
  removeHref: string | null;
}

export interface CsvPage {
  view: 'papers/csv';
  data: {
    csrf: string;
    title: string;
    paperHref: string;
    enterHref: string;
    resultsHref: string;
    action: string;
    questions: number;
    why: string | null;
    text: string;
    report: CsvReportPart | null;
    titleBlock: TitleField[];
  };
}

export interface CsvReportPart {
  lead: string;
  /** Rows that cannot be imported, or can and perhaps should not. */
  findings: { place: string; words: string }[];
  guests: string | null;
  absent: string | null;
  /** The button that imports the clean rows, and how many they are; null when there are none. */
  confirm: { label: string; clean: string } | null;
}
