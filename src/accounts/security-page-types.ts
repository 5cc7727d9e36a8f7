import type { FieldPart, TitleField } from '../core/page-parts.js';

/** What the pages about passwords and one-time codes show, exactly. */

/** The second step of signing in. */
export interface SignInCodePage {
  view: 'accounts/sign-in-code';
  data: { csrf: string; code: FieldPart };
}

/** The password again, before something that matters. `sent` when a form waits in another page of the browser's history. */
export interface ConfirmPage {
  view: 'accounts/confirm';
  data: { csrf: string; back: string; name: string; hasCodes: boolean; passwordWhy: string | null; code: FieldPart };
}

export interface ConfirmedPage {
  view: 'accounts/confirmed';
  data: { name: string };
}

export interface SecurityPage {
  view: 'accounts/security';
  data: {
    csrf: string;
    name: string;
    saved: string | null;
    oldWhy: string | null;
    passwordWhy: string | null;
    /** Null without one-time codes; how many recovery codes are left with them. */
    codes: { left: string } | null;
    forAll: boolean;
    dropPasswordWhy: string | null;
    dropCode: FieldPart;
    titleBlock: TitleField[];
  };
}

export interface CodesPage {
  view: 'accounts/codes';
  data: {
    csrf: string;
    /** All staff must have them, and this person has none yet. */
    asked: boolean;
    secret: string;
    /** The same in fours, to be typed. */
    fours: string;
    qr: { size: number; d: string };
    code: FieldPart;
    titleBlock: TitleField[];
  };
}

/** Shown once. */
export interface RecoveryPage {
  view: 'accounts/recovery-codes';
  data: { name: string; codes: string[]; first: boolean; titleBlock: TitleField[] };
}
