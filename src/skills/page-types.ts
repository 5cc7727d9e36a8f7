import type { ClassTab } from '../classes/index.js';
import type { CautionPart, FieldPart, TitleField } from '../core/page-parts.js';

/** What the pages of practical skills show, exactly. */

/** A skill as it is asked. */
export interface AskedPart {
  title: string;
  minutes: string;
  /** Where it holds, where that is not everywhere. */
  place: string | null;
  brings: string[];
  showing: string[];
  criteria: { text: string; why: string }[];
  stop: string | null;
  caution: CautionPart;
  objectives: string;
  sources: string;
}

/** A signature as it stands. */
export interface SignedPart {
  title: string;
  criteria: string[];
  /** Who signed, and for which day. */
  words: string;
  remarks: string | null;
}

export interface WithdrawnPart {
  title: string;
  /** What was signed, and then who took it back, when and why. */
  words: string;
  withdrawn: string;
}

interface FormFault {
  word: string;
  why: string;
  target: string;
}

export interface SkillsGridPage {
  view: 'skills/grid';
  data: {
    tabs: ClassTab[];
    name: string;
    lead: string;
    skills: { title: string; place: string | null }[];
    rows: {
      name: string;
      href: string;
      cells: { href: string | null; words: string; figure: string; year: string | null }[];
      total: string;
    }[];
    totals: string[];
    blankHref: string | null;
    peopleHref: string;
    titleBlock: TitleField[];
  };
}

export interface SignForm {
  action: string;
  id: string;
  key: string;
  mark: string;
  criteria: { id: string; name: string; text: string; why: string; ticked: boolean; missing: boolean }[];
  seenOn: FieldPart & { id: string; earliest: string; latest: string };
  remarks: FieldPart & { id: string };
  button: string;
}

export interface WithdrawForm {
  action: string;
  id: string;
  reason: FieldPart & { id: string };
  open: boolean;
}

export interface SkillSheetPage {
  view: 'skills/sheet';
  data: {
    tabs: ClassTab[];
    csrf: string;
    className: string;
    name: string;
    lead: string;
    fault: FormFault | null;
    gridHref: string;
    recordHref: string;
    skills: {
      anchor: string;
      open: boolean;
      state: string;
      asked: AskedPart;
      form: SignForm | null;
      signed: { part: SignedPart; changed: boolean; withdraw: WithdrawForm } | null;
      withdrawn: WithdrawnPart[];
    }[];
    /** Signed once, and asked no more here. */
    gone: { signed: { part: SignedPart; withdraw: WithdrawForm }[]; withdrawn: WithdrawnPart[] } | null;
    titleBlock: TitleField[];
  };
}

export interface SkillRecordPage {
  view: 'skills/record';
  data: {
    tabs: ClassTab[];
    className: string;
    name: string;
    lead: string;
    backHref: string;
    signed: SignedPart[];
    withdrawn: WithdrawnPart[];
    open: string[];
    titleBlock: TitleField[];
  };
}

export interface BlankSheetPage {
  view: 'skills/blank';
  data: { tabs: ClassTab[]; className: string; backHref: string; skills: AskedPart[]; titleBlock: TitleField[] };
}

export interface OwnSkillsPage {
  view: 'skills/own';
  data: {
    lead: string;
    /** Whether everything stands open, as it prints. */
    all: boolean;
    /** To the other of the two; null where there is nothing. */
    allHref: string | null;
    allLabel: string;
    open: AskedPart[];
    signed: SignedPart[];
    withdrawn: WithdrawnPart[];
    titleBlock: TitleField[];
  };
}
