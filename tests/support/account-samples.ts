import { codesPage, recoveryPage, securityPage } from '../../src/accounts/security-pages.js';
import { confirmedPage, confirmPage, signInCodePage } from '../../src/accounts/sign-in-pages.js';
import { staffMemberPage, staffPage } from '../../src/accounts/staff-pages.js';
import type { ListedStaff } from '../../src/accounts/staff-store.js';
import type { Person } from '../../src/accounts/index.js';

/** The pages of passwords, one-time codes and staff, made by their builders from invented people. */

const csrf = 'dGhpcyBpcyBhIHRva2Vu-_.1';
const now = new Date('2026-11-26T19:00:00Z');
const person: Person = {
  id: 3,
  displayName: 'H. <Vane>',
  role: 'administrator',
  timeZone: 'Europe/London',
  region: 'uk',
  sessionHash: Buffer.alloc(32),
};
const secret = 'GEZDGNBVGY3TQOJQGEZDGNBVGY3TQOJQ';
const address = `otpauth://totp/Rungwise%20hut.local:H.%20%3CVane%3E?issuer=Rungwise%20hut.local&secret=${secret}&algorithm=SHA1&digits=6&period=30`;
const wrong = 'That code does not fit. Each code works once: wait for the next one and type that.';

const listed = (more: Partial<ListedStaff>): ListedStaff => ({
  id: 4,
  displayName: 'L. <Sedgewick>',
  role: 'tutor',
  hasPassword: true,
  hasCodes: true,
  invitationExpiresAt: null,
  lastSeenAt: new Date('2026-11-19T20:00:00Z'),
  closedAt: null,
  ...more,
});
const session = (word: string, more: { here?: boolean; shared?: boolean } = {}) => ({
  word: word.repeat(24),
  here: false,
  shared: false,
  createdAt: new Date('2026-11-25T18:00:00Z'),
  lastSeenAt: now,
  ...more,
});
const link = { name: 'L. <Sedgewick>', href: `http://192.0.2.10:3000/invitation/${'Abc_-123'.repeat(4)}`, until: '2026-11-26 20:00 UTC' };
const people = [
  listed({ id: 3, displayName: 'H. <Vane>', role: 'administrator' }),
  listed({}),
  listed({ id: 5, displayName: 'Bartholomew Featherstonehaugh-Wobblington', hasCodes: false, closedAt: new Date('2026-11-01T10:00:00Z') }),
  listed({ id: 6, displayName: 'Ludo', hasPassword: false, hasCodes: false, lastSeenAt: null }),
];
const member = { member: listed({}), sessions: [session('a'), session('b', { shared: true })], own: false };

export const accountPages = [
  { name: 'sign-in-code', page: signInCodePage(csrf), staff: false, layout: 'one' },
  { name: 'sign-in-code-fault', page: signInCodePage(csrf, wrong), staff: false, layout: 'one' },
  { name: 'confirm', page: confirmPage(csrf, '/staff', 'H. <Vane>', true), staff: true, layout: 'one' },
  { name: 'confirm-without-codes', page: confirmPage(csrf, '', 'H. <Vane>', false), staff: true, layout: 'one' },
  {
    name: 'confirm-fault',
    page: confirmPage(csrf, '/staff', 'H. <Vane>', true, { password: 'That is not your password. Capital letters count.', code: null }),
    staff: true,
    layout: 'one',
  },
  {
    name: 'confirm-code-fault',
    page: confirmPage(csrf, '/staff', 'H. <Vane>', true, { password: null, code: wrong }),
    staff: true,
    layout: 'one',
  },
  { name: 'confirmed', page: confirmedPage('H. <Vane>'), staff: true, layout: 'one' },
  { name: 'security', page: securityPage(person, { codes: null, forAll: false }, csrf, null), staff: true, layout: 'two' },
  {
    name: 'security-codes',
    page: securityPage(
      person,
      { codes: { left: 1 }, forAll: true },
      csrf,
      'Your password is changed, and your other browsers are signed out.',
    ),
    staff: true,
    layout: 'two',
  },
  {
    name: 'security-fault',
    page: securityPage(person, { codes: { left: 9 }, forAll: false }, csrf, null, { password: 'That password would be guessed soon.' }),
    staff: true,
    layout: 'two',
  },
  {
    name: 'security-off-fault',
    page: securityPage(person, { codes: { left: 9 }, forAll: false }, csrf, null, { dropCode: wrong }),
    staff: true,
    layout: 'two',
  },
  { name: 'codes', page: codesPage(person, secret, address, false, csrf), staff: true, layout: 'two' },
  {
    name: 'codes-asked-fault',
    page: codesPage(person, secret, address, true, csrf, { value: '', why: wrong }),
    staff: true,
    layout: 'two',
  },
  {
    name: 'recovery-codes',
    page: recoveryPage(
      person,
      Array.from({ length: 10 }, (_, index) => `K7QW3MXP2${index}AB`.replaceAll('0', 'Z').replaceAll('1', 'Y')),
      true,
      'Thursday 26 November 2026',
    ),
    staff: true,
    layout: 'one',
  },
  {
    name: 'recovery-codes-again',
    page: recoveryPage(person, ['K7QW3MXP2ZAB'], false, 'Thursday 26 November 2026'),
    staff: true,
    layout: 'one',
  },
  { name: 'staff-list', page: staffPage({ people, codesForAll: true }, now, csrf), staff: true, layout: 'two' },
  {
    name: 'staff-list-fault',
    page: staffPage({ people, codesForAll: false }, now, csrf, null, {
      value: 'H. <Vane>',
      why: 'Somebody with that name is on the list already.',
    }),
    staff: true,
    layout: 'two',
  },
  { name: 'staff-member', page: staffMemberPage(member, now, csrf), staff: true, layout: 'two' },
  { name: 'staff-member-link', page: staffMemberPage(member, now, csrf, link), staff: true, layout: 'two' },
  {
    name: 'staff-member-closed',
    page: staffMemberPage({ member: listed({ closedAt: now, hasCodes: false }), sessions: [], own: false }, now, csrf),
    staff: true,
    layout: 'two',
  },
  {
    name: 'staff-member-invited',
    page: staffMemberPage({ member: listed({ hasPassword: false, hasCodes: false }), sessions: [], own: false }, now, csrf),
    staff: true,
    layout: 'two',
  },
  {
    name: 'staff-member-own',
    page: staffMemberPage(
      { member: listed({ role: 'administrator' }), sessions: [session('a', { here: true }), session('b')], own: true },
      now,
      csrf,
    ),
    staff: true,
    layout: 'two',
  },
] as const;
