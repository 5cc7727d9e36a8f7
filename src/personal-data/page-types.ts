import type { FieldPart, TitleField } from '../core/page-parts.js';

/** Exact data of the pages about people's data. */

export interface KindPart {
  id: string;
  title: string;
  count: string;
  seen: string;
  kept: string | null;
  lines: string[];
}

export interface DataPage {
  view: 'personal-data/data';
  data: {
    candidate: boolean;
    lead: string;
    kinds: KindPart[];
    /** Kinds of which nothing is held. */
    none: string[];
    titleBlock: TitleField[];
  };
}

export interface WholePage {
  view: 'personal-data/whole';
  data: {
    name: string;
    lead: string;
    kinds: KindPart[];
    none: string[];
    before: string | null;
    after: string | null;
    titleBlock: TitleField[];
  };
}

/** The second step of a removal: of oneself, or of somebody by an administrator. */
export interface RemovePage {
  view: 'personal-data/remove';
  data: {
    csrf: string;
    action: string;
    back: string;
    heading: string;
    lead: string;
    /** Offered first, to oneself. */
    download: boolean;
    goes: string[];
    stays: string[];
    why: string | null;
    tick: string;
    button: string;
    titleBlock: TitleField[];
  };
}

export interface RemovedPage {
  view: 'personal-data/removed';
  data: { titleBlock: TitleField[] };
}

export interface PrivacyPage {
  view: 'personal-data/privacy';
  data: {
    months: number;
    /** Whom to ask, as the club writes it. */
    contact: string | null;
    titleBlock: TitleField[];
  };
}

/** How long people are kept, and who will go. */
export interface KeepingPage {
  view: 'personal-data/keeping';
  data: {
    csrf: string;
    saved: string | null;
    contact: FieldPart;
    months: { value: string; text: string; chosen: boolean }[];
    lead: string;
    groups: { className: string; people: { name: string; seen: string; removeOn: string; keepAction: string; keepLabel: string }[] }[];
    more: string | null;
    guests: string | null;
    kept: { name: string; until: string }[];
    titleBlock: TitleField[];
  };
}

/** An administrator looks for somebody who is to be removed. */
export interface PeoplePage {
  view: 'personal-data/people';
  data: {
    text: string;
    said: string | null;
    found: string;
    people: { href: string; name: string; facts: string }[];
    titleBlock: TitleField[];
  };
}
