import type { CautionPart, TitleField } from '../core/page-parts.js';
import type { Level } from '../core/classes/level.js';
import type { ClassTab } from '../classes/index.js';

/** Exact data of the pages that tell a tutor how a class stands. */

interface Choice {
  href: string;
  text: string;
  current: boolean;
}

/** A tutor's or administrator's first page. */
export interface ClassesPage {
  view: 'home/tutor';
  data: {
    heading: string;
    /** For administrators: what the server needs of them. */
    warnings: { what: string }[];
    classes: {
      name: string;
      /** Candidates, meeting, exam. */
      facts: string;
      /** Who has been away, who was sure and wrong; null when there is nothing to say. */
      needs: string | null;
      helpHref: string;
      teachHref: string;
      badHref: string;
      peopleHref: string;
    }[];
    ended: { name: string; href: string }[];
    newHref: string;
    clubHref: string;
    analyseHref: string;
    staffHref: string | null;
    titleBlock: TitleField[];
  };
}

export interface GridCellPart {
  /** 41, few or a dash. */
  figure: string;
  level: Level;
  /** `8/20` asked of all. */
  share: string;
  href: string;
  /** The whole cell in words, for those who hear it. */
  words: string;
}

/** An outlook as a dimension, drawn over 0 to 100 % on a line 72 units long. */
export interface OutlookPart {
  value: string;
  range: string;
  from: number;
  to: number;
  at: number;
}

export interface GridPage {
  view: 'teaching/grid';
  data: {
    tabs: ClassTab[];
    name: string;
    meeting: string;
    lead: string;
    /** What is missing before the figures mean anything; null when nothing is. */
    note: { text: string; href: string; label: string } | null;
    days: Choice[];
    figures: Choice[];
    orders: Choice[];
    topics: { code: string; title: string; item: number | null; href: string; sorted: boolean }[];
    rows: { name: string; needs: string | null; outlook: OutlookPart | null; cells: GridCellPart[] }[];
    means: { figure: string; level: Level }[];
    plan: { number: number; title: string; text: string }[];
    planHeading: string;
    planHref: string;
    badHref: string;
    aside: string | null;
    away: { name: string; seen: string }[];
    mistakes: { href: string; code: string; stem: string; names: string }[];
    titleBlock: TitleField[];
  };
}

export interface CellPage {
  view: 'teaching/cell';
  data: {
    tabs: ClassTab[];
    heading: string;
    lead: string;
    backHref: string;
    rows: { href: string; code: string; stem: string; recall: string; surelyWrong: boolean; answers: string[] }[];
    unmet: { href: string; code: string; stem: string }[];
    titleBlock: TitleField[];
  };
}

export interface PlanPage {
  view: 'teaching/plan';
  data: {
    tabs: ClassTab[];
    name: string;
    heading: string;
    lead: string;
    note: { text: string; href: string; label: string } | null;
    items: {
      number: number;
      title: string;
      /** Code, topic and minutes. */
      where: string;
      /** Marks lost with the spread, and how many answers that rests on. */
      costs: string;
      mistakes: string[];
      /** Said when no mistake is common: the ones the syllabus warns of. */
      warned: string[];
      mustKnow: string;
    }[];
    opener: { href: string; code: string; stem: string; wrong: string }[];
    eveningHref: string | null;
    practical: { title: string; minutes: number; brings: string[]; showing: string[]; href: string } | null;
    aside: string[];
    unsure: { code: string; title: string; answers: string }[];
    cautions: CautionPart[];
    titleBlock: TitleField[];
  };
}

export interface ClubPage {
  view: 'teaching/club';
  data: {
    lead: string;
    topics: { code: string; title: string }[];
    rows: { name: string; href: string | null; people: string; cells: { figure: string; level: Level; words: string }[] }[];
    titleBlock: TitleField[];
  };
}
