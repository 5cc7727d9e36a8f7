import type { FieldPart, TitleField } from '../core/page-parts.js';
import type { QrPart } from '../core/qr-code.js';
import type { ClassTab } from './tabs.js';

/** What the pages about a class and its people show, exactly. */

export interface Choice {
  value: string;
  text: string;
  chosen: boolean;
}

/** The fields of a class, for making one and for changing it. */
export interface ClassFieldsPart {
  name: FieldPart;
  exam: FieldPart;
  paper: { choices: Choice[]; why: string | null; hint: string };
  meetsOn: { choices: Choice[]; why: string | null };
  meetsAt: FieldPart;
}

/** Said first when a form comes back: why, and where. */
interface FaultPart {
  why: string;
  target: string;
}

/** What was done, on the page that follows. */
export interface SaidPart {
  word: string;
  text: string;
}

/** An address that people are to type or scan. `local` where it works on this machine only. */
export interface AddressPart {
  text: string;
  local: boolean;
}

export interface NewClassPage {
  view: 'classes/new';
  data: { csrf: string; startToken: string; fields: ClassFieldsPart; fault: FaultPart | null; titleBlock: TitleField[] };
}

export interface PeoplePage {
  view: 'classes/people';
  data: {
    csrf: string;
    /** Address of this page, under which its forms are sent. */
    root: string;
    name: string;
    tabs: ClassTab[];
    fault: FaultPart | null;
    said: SaidPart | null;
    lead: string;
    members: { href: string; name: string; joined: string; seen: string }[];
    /** Who will be removed for want of visits. */
    leaving: { name: string; on: string; keep: string }[];
    ended: boolean;
    endAction: string;
    add: { action: string; token: string; names: FieldPart; regions: { value: string; label: string; chosen: boolean }[] };
    /** Null while the class has no code that opens it. */
    code: { fours: string; until: string; address: AddressPart; qr: QrPart; printHref: string } | null;
    /** Said where a code has run out. */
    codeNote: string | null;
    codeAction: string;
    days: Choice[];
    /** `remove` where there is more than one, so that one can go. */
    tutors: { name: string; role: string; id: string; you: boolean; remove: string | null }[];
    tutorAction: string;
    otherStaff: Choice[];
    classAction: string;
    fields: ClassFieldsPart;
    fieldsOpen: boolean;
    titleBlock: TitleField[];
  };
}

/** One candidate of a class: a new slip, another class, out of it. */
export interface PersonPage {
  view: 'classes/people-person';
  data: {
    csrf: string;
    name: string;
    className: string;
    back: string;
    tabs: ClassTab[];
    facts: string[];
    /** Where an administrator removes the account; null for a tutor. */
    removeWholly: string | null;
    slipAction: string;
    /** When the last slip was made, for the server; empty for never. */
    before: string;
    moveAction: string;
    others: Choice[];
    removeAction: string;
    titleBlock: TitleField[];
  };
}

/** Return slips to print: each with a phrase, which no server can show again. */
export interface SlipsPage {
  view: 'classes/slips';
  data: {
    className: string;
    back: string;
    kept: string;
    slips: { name: string; words: string[] }[];
    heading: string;
    address: AddressPart;
    qr: QrPart;
    foot: string;
    titleBlock: TitleField[];
  };
}

/** Slips that say how to join, all alike. */
export interface JoinSlipsPage {
  view: 'classes/join-slips';
  data: {
    className: string;
    back: string;
    action: string;
    /** Null while the class has no code that opens it. */
    slip: { meeting: string | null; tutors: string; fours: string; until: string; address: AddressPart; qr: QrPart } | null;
    copies: Choice[];
    /** One for each slip. */
    places: number[];
    titleBlock: TitleField[];
  };
}
