import type { TellTalePart, WorkingPart } from '../core/outcome-parts.js';
import type { CautionPart, FieldPart, TitleField } from '../core/page-parts.js';
import type { AnsweredPart } from '../core/tasks/answered-part.js';
import type { AskedPart } from '../core/tasks/asked-part.js';

/** What each page of the bank shows, exactly. */

export interface Choice {
  value: string;
  text: string;
  chosen: boolean;
}

export interface BankPage {
  view: 'bank/list';
  data: {
    /** Topics, each with itself and its objectives to choose. */
    where: { label: string; choices: Choice[] }[];
    kinds: Choice[];
    text: string;
    retired: boolean;
    found: string;
    objectives: {
      title: string;
      entries: { href: string; code: string; stem: string; kind: string; note: string | null }[];
    }[];
    before: string | null;
    after: string | null;
    pageWords: string | null;
    /** Queries that wait. */
    queries: string;
    titleBlock: TitleField[];
  };
}

export interface BankQuestionPage {
  view: 'bank/question';
  data: AskedPart & {
    code: string;
    topicTitle: string;
    /** Retired, or an older revision. */
    state: string | null;
    back: { href: string; label: string };
    /** Null where it always stands the same. */
    again: { href: string; label: string } | null;
    regions: { href: string | null; label: string }[];
    fact: string;
    key: AnsweredPart;
    explanation: string | null;
    tellTales: TellTalePart[];
    working: WorkingPart | null;
    caution: CautionPart | null;
    sources: { title: string; note: string }[];
    revisions: { href: string | null; label: string; note: string }[];
    queries: { href: string; label: string; state: string }[];
    raiseHref: string;
    titleBlock: TitleField[];
  };
}

export interface RaisePage {
  view: 'bank/raise';
  data: {
    csrf: string;
    query: string;
    question: string;
    revision: string;
    seed: string;
    region: string;
    code: string;
    stem: string;
    body: FieldPart;
    titleBlock: TitleField[];
  };
}

export interface QueriesPage {
  view: 'bank/queries';
  data: {
    headline: string;
    lead: string;
    waiting: QueryLine[];
    answered: QueryLine[];
    titleBlock: TitleField[];
  };
}

export interface QueryLine {
  href: string;
  code: string;
  body: string;
  note: string;
}

export interface QueryPage {
  view: 'bank/query';
  data: {
    csrf: string;
    code: string;
    stem: string;
    /** For those who may see keys. */
    questionHref: string | null;
    byName: string;
    raised: string;
    body: string[];
    answer: { by: string; when: string; paragraphs: string[] } | null;
    /** Said to whoever raised it while it waits. */
    waiting: string | null;
    /** For those who may answer. */
    form: { action: string; before: string; answer: FieldPart; label: string; hint: string; folded: boolean } | null;
    titleBlock: TitleField[];
  };
}
