import type { ClassTab } from '../classes/index.js';
import type { TellTalePart, WorkingPart } from '../core/outcome-parts.js';
import type { CautionPart, FieldPart, TitleField } from '../core/page-parts.js';
import type { AnsweredPart } from '../core/tasks/answered-part.js';

/** What each page of a class evening shows, exactly. */

/** How a page follows the evening: marks for the browser's module. */
export interface LivePart {
  /** The page's own address. */
  page: string;
  /** The stream of changes; '' when nothing changes any more. */
  events: string;
  /** What this page shows, as the stream tells it. */
  seen: string;
  /** Said to whoever cannot see the change. */
  say: string;
}

export interface ListPage {
  view: 'evenings/list';
  data: {
    tabs: ClassTab[];
    className: string;
    csrf: string;
    action: string;
    /** The id of the evening that the form would make. */
    id: string;
    /** The evening that runs, to go on with: then that is the one blue step. */
    running: { href: string; text: string } | null;
    evenings: { href: string; title: string; state: string; questions: number }[];
    title: FieldPart;
    questions: FieldPart;
    count: FieldPart;
    regions: { value: string; text: string; chosen: boolean }[];
    topics: { name: string; text: string; ticked: boolean }[];
    /** Whether any topic is ticked, which unfolds them. */
    unfolded: boolean;
    /** What was asked for and cannot be. */
    leftOut: string | null;
    fault: { why: string; target: string } | null;
    titleBlock: TitleField[];
  };
}

export interface CountsPart {
  rows: { letter: string; count: number; width: string; key: boolean }[];
  /** "9 answers: 6 on phones, 3 hands." */
  total: string;
}

export interface QuestionPart {
  stem: string;
  drawing: { svg: string } | null;
  options: { letter: string; text: string }[];
}

export interface KeyPart {
  fact: string;
  answered: AnsweredPart;
  explanation: string | null;
  working: WorkingPart | null;
}

export interface ControlPage {
  view: 'evenings/control';
  data: {
    tabs: ClassTab[];
    className: string;
    csrf: string;
    title: string;
    live: LivePart;
    headline: string;
    state: string;
    /** How many have answered on phones. */
    answered: string | null;
    /** Why the last step was not taken. */
    said: string | null;
    fault: { why: string; target: string } | null;
    action: string;
    /** The question this page shows; 0 before the first. */
    seen: number;
    go: { step: string; label: string } | null;
    more: { step: string; label: string }[];
    /** Ending in two steps; null once it is over. */
    end: boolean;
    hands: { fields: { letter: string; id: string; name: string; value: string; wrong: boolean }[]; was: string } | null;
    asked: QuestionPart | null;
    /** Folded away until it is shown. */
    key: KeyPart | null;
    counts: CountsPart | null;
    caution: CautionPart | null;
    /** While it runs. */
    list: { href: string; position: number; code: string; objective: string; state: string; current: boolean }[];
    /** When it is over. */
    results: { href: string; position: number; code: string; objective: string; right: string; counts: string }[];
    back: string;
    screen: string;
    /** Where candidates go; null where this server was asked for by a name that only this machine knows. */
    phones: string | null;
    titleBlock: TitleField[];
  };
}

export interface ScreenPage {
  view: 'evenings/screen';
  data: {
    title: string;
    place: string;
    live: LivePart;
    /** Before the first question and after the last. */
    headline: string | null;
    stem: string | null;
    drawing: { svg: string } | null;
    options: { letter: string; text: string; bar: { count: number; width: string } | null; key: boolean }[];
    /** Whether it is open, and how many have answered; or what was counted. */
    state: string | null;
    /** Why the key is right; empty until it is shown. */
    reason: string[];
    caution: CautionPart | null;
    /** Where candidates go. */
    phones: string | null;
    back: string;
    titleBlock: TitleField[];
  };
}

export interface AnswerPage {
  view: 'evenings/answer';
  data: {
    title: string;
    place: string;
    live: LivePart;
    csrf: string;
    action: string;
    /** The question this page shows. */
    seen: number;
    /** While there is nothing to answer. */
    headline: string | null;
    lead: string | null;
    stem: string | null;
    drawing: { svg: string } | null;
    options: { letter: string; text: string; chosen: boolean }[];
    /** Whether the options are buttons. */
    open: boolean;
    /** What stands of one's own answer; read out when it changes. */
    own: string | null;
    /** A choice that was not taken. */
    late: string | null;
    shown: {
      verdict: { sign: 'yes' | 'no'; word: string; fact: string; said: string } | null;
      fact: string;
      tellTales: TellTalePart[];
      key: KeyPart;
      /** Where one says that the question seems wrong. */
      query: string;
    } | null;
    /** When it is over. */
    summary: { href: string; position: number; code: string; objective: string; own: string }[];
    caution: CautionPart | null;
    /** This page, for browsers without scripts. */
    again: string | null;
    back: { href: string; text: string } | null;
    titleBlock: TitleField[];
  };
}

export interface OpenPage {
  view: 'evenings/open';
  data: {
    headline: string;
    /** Where there is nothing to choose. */
    lead: string;
    evenings: { href: string; text: string; className: string; state: string }[];
    titleBlock: TitleField[];
  };
}
