import type { FieldPart, TitleField } from '../core/page-parts.js';

/** What the pages about staff show, exactly. */

export interface RoleChoice {
  value: string;
  label: string;
  chosen: boolean;
}

/** A fresh one-time link, shown once. */
export interface LinkPart {
  name: string;
  href: string;
  until: string;
}

/** The administrator's list of staff, with a form to invite. */
export interface StaffPage {
  view: 'accounts/staff';
  data: {
    csrf: string;
    people: { name: string; href: string; role: string; state: string; codes: boolean }[];
    name: FieldPart;
    roles: RoleChoice[];
    invitation: LinkPart | null;
    /** Whether all staff must use one-time codes, and how many of them do. */
    codes: { forAll: boolean; with: number; of: number };
    titleBlock: TitleField[];
  };
}

/** One member of staff, for an administrator. */
export interface StaffMemberPage {
  view: 'accounts/staff-member';
  data: {
    csrf: string;
    name: string;
    role: string;
    state: string;
    /** One's own page shows the state alone: nobody does these things to themselves. */
    own: boolean;
    open: boolean;
    hasPassword: boolean;
    hasCodes: boolean;
    link: LinkPart | null;
    roles: RoleChoice[];
    sessions: { action: string; word: string; here: boolean; shared: boolean; since: string; seen: string }[];
    /** Where the forms go. */
    actions: { role: string; close: string; reopen: string; link: string; signOut: string; codes: string };
    titleBlock: TitleField[];
  };
}
