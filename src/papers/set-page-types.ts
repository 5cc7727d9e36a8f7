import type { ReliabilityPart } from '../core/analysis/reliability-words.js';
import type { CautionPart, FieldPart, TitleField } from '../core/page-parts.js';
import type { AnsweredPart } from '../core/tasks/answered-part.js';

/** What each page of a tutor's papers shows, exactly. */

interface Choice {
  value: string;
  text: string;
  chosen: boolean;
}

export interface ClassPapersPage {
  view: 'papers/class-papers';
  data: {
    csrf: string;
    /** The id of the paper that the form would set. */
    id: string;
    set: { href: string; title: string; className: string; window: string; handedIn: string }[];
    /** Null where the tutor has no class, or no pack has a paper. */
    form: {
      classes: Choice[];
      papers: Choice[];
      paperWhy: string | null;
      regions: Choice[];
      title: FieldPart;
      versions: FieldPart;
      screen: boolean;
      opens: FieldPart;
      closes: FieldPart;
      /** Said above the form when it came back. */
      fault: { why: string; target: string } | null;
      timeZone: string;
    } | null;
    titleBlock: TitleField[];
  };
}

export interface ClassPaperPage {
  view: 'papers/class-paper';
  data: {
    csrf: string;
    title: string;
    lead: string;
    /** Where it is closed; null when it cannot be sat any more. */
    close: string | null;
    links: { href: string; text: string }[];
    remarked: string | null;
    roll: {
      name: string;
      version: string;
      state: string;
      mark: string;
      /** The form for extra time; null for a name without an account. */
      extra: { action: string; member: string; choices: Choice[]; label: string } | null;
      /** The sitting of a name that can be taken away. */
      guest: string | null;
    }[];
    /** The questions of the first version, those that fewest had right first; none before anybody has handed in. */
    questions: { href: string; position: number; objective: string; title: string; right: string }[];
    /** How far the marks can be relied on, and who is near the pass mark; null before anybody has handed in. */
    reliability: (ReliabilityPart & { near: string | null }) | null;
    titleBlock: TitleField[];
  };
}

export interface ClassReviewPage {
  view: 'papers/class-review';
  data: {
    title: string;
    place: string;
    stem: string;
    /** Before the key is shown. */
    hidden: { drawing: { svg: string } | null; options: { letter: string; text: string }[]; show: string } | null;
    /** After it. */
    shown: {
      fact: string;
      answered: AnsweredPart;
      /** Said in place of the counts. */
      few: string | null;
      counts: { letter: string; count: number; share: string }[];
      blank: string | null;
      explanation: string | null;
    } | null;
    caution: CautionPart | null;
    before: string | null;
    after: string | null;
    back: string;
    titleBlock: TitleField[];
  };
}
