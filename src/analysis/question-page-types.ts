import type { TitleField } from '../core/page-parts.js';
import type { DrawingView } from '../core/tasks/asked-part.js';
import type { ClassTab } from '../classes/index.js';

/** What the pages about the questions of a class show, exactly. */

export interface ScopeLink {
  href: string;
  text: string;
  current: boolean;
}

/** One of a folded list. */
export interface QuestionLine {
  href: string;
  code: string;
  title: string;
  note: string;
}

export interface QueryLink {
  href: string;
  text: string;
  note: string;
}

export interface SignPart {
  /** Whether somebody should read the question. */
  grave: boolean;
  text: string;
  todo: string;
}

export interface SuspectPart {
  href: string;
  code: string;
  title: string;
  stem: string;
  figures: string;
  signs: SignPart[];
  choices: { letter: string | null; text: string; mark: string; chosen: string }[];
  queries: QueryLink[];
}

export interface ClassQuestionsPage {
  view: 'analysis/class-questions';
  data: {
    className: string;
    members: string;
    tabs: ClassTab[];
    scopes: ScopeLink[];
    lead: string;
    note: string;
    suspects: SuspectPart[];
    /** Folded away: too many for one evening, no sign, too few answers. */
    folds: { summary: string; lines: QuestionLine[] }[];
    hidden: string | null;
    titleBlock: TitleField[];
  };
}

export interface QuestionFiguresPage {
  view: 'analysis/question-figures';
  data: {
    className: string;
    code: string;
    tabs: ClassTab[];
    back: string;
    scopes: ScopeLink[];
    stem: string;
    drawing: DrawingView | null;
    /** The key where no list tells it. */
    fact: string | null;
    lead: string;
    /** Why there are no figures. */
    hidden: string | null;
    signs: SignPart[];
    choices: {
      columns: { parts: boolean; rest: boolean };
      rows: { letter: string | null; text: string; mark: string; chosen: string; rest: string }[];
    } | null;
    /** By answer, or by right and wrong where it has parts; the levels of certainty that somebody said. */
    sureness: { levels: string[]; rows: { name: string; mark: string; counts: string[] }[] } | null;
    later: string;
    rest: string;
    groups: string | null;
    revision: string;
    queries: QueryLink[];
    bankHref: string;
    titleBlock: TitleField[];
  };
}
