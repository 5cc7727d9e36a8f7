import type { TitleField } from '../core/page-parts.js';

/** What the page that prints a class paper shows, exactly. */

/** What is wished for in the address. */
export interface PrintWish {
  what: 'papers' | 'sheets' | 'key';
  from: number;
  to: number;
  size: 'a4' | 'letter';
  large: boolean;
}

interface Choice {
  value: string;
  text: string;
  chosen: boolean;
}

export interface PrintPage {
  view: 'papers/print';
  data: {
    className: string;
    title: string;
    back: string;
    action: string;
    /** What these sheets are, and what to do with them. */
    lead: string;
    whats: Choice[];
    sizes: Choice[];
    large: boolean;
    /** Versions to begin and to end with; empty when there is one. */
    from: Choice[];
    to: Choice[];
    /** The size of the sheets is US Letter and not A4. */
    letter: boolean;
    /** The sheets belong to one set, so that each can say of how many it is. */
    oneSet: boolean;
    papers: PrintedPaper[];
    sheets: PrintedSheet[];
    key: PrintedKey | null;
    titleBlock: TitleField[];
  };
}

/** The questions of one version, and the answer sheet that goes with it. Nothing in it tells the key. */
export interface PrintedPaper {
  version: number;
  title: string;
  className: string;
  /** "26 questions, 30 minutes, pass mark 19, UK 230 V". */
  facts: string;
  questions: {
    number: number;
    stem: string;
    drawing: { svg: string } | null;
    /** What to do with the letters on a drawing. */
    lead: string | null;
    /** Short enough for two columns. */
    pairs: boolean;
    options: { letter: string; text: string }[];
  }[];
  /** Whose questions they are, and under which licence. */
  source: string;
  sheet: PrintedSheet;
}

export interface PrintedSheet {
  version: number;
  title: string;
  className: string;
  rows: { number: number; letters: string[] }[];
  questions: number;
  /** So many rows that they must stand closer to stay on one sheet. */
  dense: boolean;
}

export interface PrintedKey {
  title: string;
  className: string;
  /** Pack and version, and what passes. */
  facts: string;
  /** All versions side by side, so many at a time as a sheet is wide; empty when there is one version. */
  together: { versions: number[]; rows: { number: number; letters: string[] }[] }[];
  versions: { version: number; rows: { number: number; letter: string; objective: string }[] }[];
}
