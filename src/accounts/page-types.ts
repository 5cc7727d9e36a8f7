import type { FieldPart, TitleField } from '../core/page-parts.js';

/** What each page of accounts shows, exactly. */

export interface WelcomePage {
  view: 'home/welcome';
  data: {
    csrf: string;
    startToken: string;
    name: FieldPart;
    region: string;
    regions: { value: string; label: string; chosen: boolean }[];
    questions: number;
    objectives: number;
    topics: number;
    packs: string;
    titleBlock: TitleField[];
  };
}

/** The return phrase, shown once. */
export interface PhrasePage {
  view: 'accounts/phrase';
  data: { name: string; words: string[]; first: boolean; returnHref: string; titleBlock: TitleField[] };
}

export interface ReturnPage {
  view: 'accounts/return';
  data: { csrf: string; phrase: FieldPart; words: number; sharedTicked: boolean };
}

export interface SignInPage {
  view: 'accounts/sign-in';
  data: { csrf: string; name: FieldPart; why: string | null; sharedTicked: boolean };
}

/** The one-time pages: the first administrator, and an invited tutor. */
export interface SetPasswordPage {
  view: 'accounts/set-password';
  data: { csrf: string; action: string; heading: string; lead: string; name: FieldPart; nameFixed: boolean; passwordWhy: string | null };
}

export interface MePage {
  view: 'accounts/me';
  data: {
    csrf: string;
    name: FieldPart;
    timeZone: FieldPart;
    regions: { value: string; label: string; chosen: boolean }[];
    candidate: boolean;
    inClasses: boolean;
    /** The last return slip that a tutor made. */
    slip: { by: string; on: string } | null;
    saved: boolean;
    sessions: { here: boolean; word: string; shared: boolean; since: string; seen: string }[];
    /** This browser is known to be on a computer that others use. */
    onShared: boolean;
    roleWord: string;
    titleBlock: TitleField[];
  };
}
