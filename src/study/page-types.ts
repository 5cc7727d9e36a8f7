import type { TellTalePart, WorkingPart } from '../core/outcome-parts.js';
import type { CautionPart, TitleField } from '../core/page-parts.js';
import type { AnsweredPart } from '../core/tasks/answered-part.js';
import type { AskedPart } from '../core/tasks/asked-part.js';

/** What each page of study shows, exactly. */

export interface QuestionPage {
  view: 'study/question';
  data: AskedPart & {
    topicTitle: string;
    position: number;
    total: number;
    /** Where the answer is sent, with the token that makes it count once. */
    action: string;
    token: string;
    csrf: string;
    /** Said above the stem when these are the fresh numbers after a wrong one. */
    retryLead: string | null;
    /** Said above the certainty buttons when the form came back incomplete. */
    optionsWhy: string | null;
    /** The id of the control that lacks something. */
    optionsTarget: string;
    caution: CautionPart | null;
    titleBlock: TitleField[];
  };
}

export interface OutcomePage {
  view: 'study/outcome';
  data: AnsweredPart & {
    topicTitle: string;
    position: number;
    total: number;
    stem: string;
    verdict: { sign: 'yes' | 'no' | 'guess'; word: string; fact: string; said: string; score: string | null };
    /** Mistakes the answer betrays. `danger` says that acting on it could hurt someone. */
    tellTales: TellTalePart[];
    /** A wrong number, and one fresh draw is offered before any help: the working is then withheld. */
    retry: boolean;
    explanation: string | null;
    /** MathML is made by the core from the family's own formula and is safe to print as it is. */
    working: WorkingPart | null;
    caution: CautionPart | null;
    next: { href: string; label: string; note: string };
    /** Where one says that the question seems wrong. */
    queryHref: string;
    titleBlock: TitleField[];
  };
}

export interface RoundEndPage {
  view: 'study/round-end';
  data: {
    headline: string;
    lead: string;
    asked: number;
    right: number;
    /** Rows of the table: each question, how it went in words, and when it comes back. */
    rows: { objective: string; title: string; how: string; back: string; href: string }[];
    actions: { newRound: string; csrf: string; more: boolean };
    titleBlock: TitleField[];
  };
}

export interface NowPage {
  view: 'home/now';
  data: {
    today: string;
    packTitle: string;
    /** The h1: "Fourteen questions are ready" or what else is so. */
    headline: string;
    lead: string;
    /** The link to the plan. */
    plan: string;
    /** Answers to queries that the candidate has not seen yet. */
    answers: string | null;
    /** A paper that runs or is open. */
    paper: { text: string; href: string; running: boolean } | null;
    /** An evening of one's class that runs; `first` when going there is the one blue step. */
    evening: { text: string; href: string; first: boolean } | null;
    /** A paper or an evening runs, and going on with it is the one blue step. */
    busy: boolean;
    /** An unfinished round of today, to carry on with. */
    carryOn: { href: string; label: string } | null;
    /** The form that starts a round; minutes '0' is just one question. The first is the one blue button. */
    lengths: { minutes: string; label: string; questions: string }[];
    action: string;
    csrf: string;
    /** The id of the round that the form would start: sent twice, it makes one. */
    round: string;
    first: { code: string; title: string; why: string }[];
    /** At most five dates. */
    coming: { iso: string; day: string; text: string }[];
    titleBlock: TitleField[];
  };
}
