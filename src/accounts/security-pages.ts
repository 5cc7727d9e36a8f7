import { inFours } from '../core/join-code.js';
import type { FieldPart } from '../core/page-parts.js';
import { roleWords } from '../core/permissions.js';
import { qrOf } from '../core/qr-code.js';
import { empty, field } from './pages.js';
import type { CodesPage, RecoveryPage, SecurityPage } from './security-page-types.js';
import type { Person } from './sessions.js';

/** The pages of one's own password and one-time codes. */

export interface SecurityView {
  codes: { left: number } | null;
  forAll: boolean;
}

/** What did not fit in one of the page's forms. */
export interface SecurityFaults {
  old?: string | null;
  password?: string | null;
  dropPassword?: string | null;
  dropCode?: string | null;
}

export function securityPage(
  person: Person,
  { codes, forAll }: SecurityView,
  csrf: string,
  saved: string | null,
  faults: SecurityFaults = {},
): SecurityPage {
  return {
    view: 'accounts/security',
    data: {
      csrf,
      name: person.displayName,
      saved,
      oldWhy: faults.old ?? null,
      passwordWhy: faults.password ?? null,
      codes: codes === null ? null : { left: codes.left === 1 ? 'One recovery code is left.' : `${codes.left} recovery codes are left.` },
      forAll,
      dropPasswordWhy: faults.dropPassword ?? null,
      dropCode: { value: '', why: faults.dropCode ?? null },
      titleBlock: [field('Name', person.displayName, 6, true), field('Role', roleWords[person.role], 6)],
    },
  };
}

/** @param address what the QR code holds for an authenticator */
export function codesPage(
  person: Person,
  secret: string,
  address: string,
  asked: boolean,
  csrf: string,
  code: FieldPart = empty,
): CodesPage {
  const { size, d } = qrOf(address);
  return {
    view: 'accounts/codes',
    data: {
      csrf,
      asked,
      secret,
      fours: inFours(secret),
      qr: { size, d },
      code,
      titleBlock: [field('Name', person.displayName, 6, true), field('Role', roleWords[person.role], 6)],
    },
  };
}

/** @param first they have just been set up, and do not replace older ones */
export const recoveryPage = (person: Person, codes: readonly string[], first: boolean, day: string): RecoveryPage => ({
  view: 'accounts/recovery-codes',
  data: {
    name: person.displayName,
    codes: codes.map(inFours),
    first,
    titleBlock: [field('Belong to', person.displayName, 6, true), field('Made on', day, 6)],
  },
});
