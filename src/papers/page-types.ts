import type { WorkingPart, TellTalePart } from '../core/outcome-parts.js';
import type { CautionPart, PractisePart, TitleField } from '../core/page-parts.js';
import type { AnsweredPart } from '../core/tasks/answered-part.js';

/** What each page of a candidate's papers shows, exactly. */

export interface PapersPage {
  view: 'papers/papers';
  data: {
    csrf: string;
    /** The id of the sitting that the form would make. */
    sitting: string;
    /** Begun and not handed in. */
    running: { href: string; label: string; note: string }[];
    /** Set by a tutor and open now. */
    open: { action: string; label: string; note: string }[];
    papers: { value: string; text: string; chosen: boolean }[];
    /** Papers that cannot be made here, and why. */
    lacking: { text: string; why: string }[];
    extra: { value: string; text: string }[];
    done: { href: string; title: string; iso: string; day: string; mark: string; passed: string }[];
    titleBlock: TitleField[];
  };
}

export interface CoverPage {
  view: 'papers/cover';
  data: { csrf: string; action: string; title: string; facts: { label: string; value: string }[]; titleBlock: TitleField[] };
}

/** The time of a sitting as its pages show it. */
export interface TimePart {
  /** "13 minutes left". */
  left: string;
  /** Seconds, for the script that counts on. */
  seconds: number;
  /** "Hand in by 20:05." */
  until: string;
  /** The share that is gone, of a hundred, for the drawn rule. */
  gone: string;
  /** Where in the time, of a hundred, and after how many minutes; evenly apart. */
  ticks: { at: string; label: string }[];
  href: string;
}

export interface SheetQuestionPart {
  position: number;
  /** The only one of its page. */
  alone: boolean;
  stem: string;
  /** SVG made by the core. */
  drawing: { svg: string } | null;
  options: { id: string; letter: string; text: string; chosen: boolean }[];
  /** The letter as loaded, or nothing. */
  was: string;
  again: boolean;
}

/** The answer sheet beside the question: what is saved, and what is to be looked at again. */
export interface AnswerSheetPart {
  saved: number;
  open: number;
  cells: { position: number; href: string; choice: string; words: string; again: boolean; current: boolean }[];
}

export interface SittingPage {
  view: 'papers/sitting';
  data: {
    title: string;
    place: string;
    csrf: string;
    action: string;
    time: TimePart;
    /** Whether all questions stand on the page. */
    all: boolean;
    /** One, or all of them. */
    questions: SheetQuestionPart[];
    /** Where the buttons lead when what was chosen is saved. */
    next: { go: string; label: string };
    before: { go: string; label: string } | null;
    sheet: AnswerSheetPart;
    /** The other way of looking at the paper. */
    other: { href: string; label: string };
    handIn: string;
    caution: CautionPart | null;
    titleBlock: TitleField[];
  };
}

export interface HandInPage {
  view: 'papers/hand-in';
  data: {
    title: string;
    csrf: string;
    action: string;
    back: string;
    time: TimePart;
    lead: string;
    blank: { href: string; label: string }[];
    again: { href: string; label: string }[];
    titleBlock: TitleField[];
  };
}

export interface ResultPage {
  view: 'papers/result';
  data: {
    title: string;
    verdict: { sign: 'yes' | 'no'; word: string };
    lead: string;
    /** What came too late, if anything did. */
    late: string | null;
    /** Why the mark was changed, if it was. */
    remarked: string | null;
    error: string;
    topics: { topic: string; right: number; of: number }[];
    next: PractisePart[];
    questions: { href: string; position: number; objective: string; title: string; yours: string; how: string }[];
    titleBlock: TitleField[];
  };
}

export interface ReviewPage {
  view: 'papers/review';
  data: AnsweredPart & {
    title: string;
    place: string;
    stem: string;
    verdict: { sign: 'yes' | 'no'; word: string; fact: string; said: string };
    tellTales: TellTalePart[];
    explanation: string | null;
    working: WorkingPart | null;
    caution: CautionPart | null;
    before: string | null;
    after: string | null;
    result: string;
    practise: PractisePart;
    queryHref: string;
    titleBlock: TitleField[];
  };
}
