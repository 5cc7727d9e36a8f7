import type { ReliabilityPart } from '../core/analysis/reliability-words.js';
import type { FieldPart, TitleField } from '../core/page-parts.js';

/** What the pages for a table of answers show, exactly. */

export interface TablePage {
  view: 'analysis/table';
  data: {
    csrf: string;
    answers: FieldPart;
    key: FieldPart;
    /** What is wrong, place by place; null for a fresh form. */
    fault: { why: string; findings: { place: string; words: string }[] } | null;
    titleBlock: TitleField[];
  };
}

export interface TableFiguresPage {
  view: 'analysis/table-figures';
  data: {
    headline: string;
    lead: string;
    /** How much may be read from so many candidates. */
    band: string;
    /** Questions that somebody should read. */
    suspects: { id: string; figures: string; signs: { text: string; todo: string }[] }[];
    /** Worth knowing, and no sign of a fault. */
    information: { todo: string; seen: { id: string; text: string }[] }[];
    /** Questions of which too little is known; null for none. */
    few: string | null;
    chance: string | null;
    /** Whether there are candidates enough for more than counts. */
    full: boolean;
    questions: {
      id: string;
      right: string;
      limits: string;
      rest: string;
      total: string;
      upperLower: string;
      dropped: string;
      /** `look`, `too few` or nothing. */
      mark: string;
    }[];
    /** Each option of each question: how many chose it and, where that may be shown, its correlation with the rest. */
    options: { id: string; choices: { option: string; figures: string; key: boolean }[] }[];
    notes: string[];
    reliability: ReliabilityPart;
    titleBlock: TitleField[];
  };
}
