import type { FieldPart } from '../core/page-parts.js';
import { roleWords } from '../core/permissions.js';
import { dateOf, empty, field, sessionRow } from './pages.js';
import type { LinkPart, RoleChoice, StaffMemberPage, StaffPage } from './staff-page-types.js';
import type { ListedStaff } from './staff-store.js';
import type { ListedSession } from './store.js';

/** From what accounts knows of staff to what an administrator sees. */

const rolesFor = (role: string): RoleChoice[] =>
  (['tutor', 'administrator'] as const).map((value) => ({ value, label: roleWords[value], chosen: value === role }));

export interface StaffView {
  people: ListedStaff[];
  codesForAll: boolean;
}

export function staffPage(
  { people, codesForAll }: StaffView,
  now: Date,
  csrf: string,
  invitation: LinkPart | null = null,
  name: FieldPart = empty,
  role = 'tutor',
): StaffPage {
  const active = people.filter(({ closedAt, hasPassword }) => closedAt === null && hasPassword);
  return {
    view: 'accounts/staff',
    data: {
      csrf,
      people: people.map((person) => ({
        name: person.displayName,
        href: `/staff/${person.id}`,
        role: roleWords[person.role],
        state: stateOf(person, now),
        codes: person.hasCodes,
      })),
      name,
      roles: rolesFor(role),
      invitation,
      codes: { forAll: codesForAll, with: active.filter(({ hasCodes }) => hasCodes).length, of: active.length },
      titleBlock: [field('Staff', String(people.length), 6), field('As of', dateOf(now), 6)],
    },
  };
}

export interface StaffMemberView {
  member: ListedStaff;
  sessions: ListedSession[];
  own: boolean;
}

export function staffMemberPage(
  { member, sessions, own }: StaffMemberView,
  now: Date,
  csrf: string,
  link: LinkPart | null = null,
): StaffMemberPage {
  const at = (what: string): string => `/staff/${member.id}/${what}`;
  return {
    view: 'accounts/staff-member',
    data: {
      csrf,
      name: member.displayName,
      role: roleWords[member.role],
      state: stateOf(member, now),
      own,
      open: member.closedAt === null,
      hasPassword: member.hasPassword,
      hasCodes: member.hasCodes,
      link,
      roles: rolesFor(member.role),
      sessions: sessions.map((session) => ({ ...sessionRow(session), action: at('sessions/end') })),
      actions: {
        role: at('role'),
        close: at('close'),
        reopen: at('reopen'),
        link: at('link'),
        signOut: at('sign-out'),
        codes: at('codes/remove'),
      },
      titleBlock: [field('Name', member.displayName, 6, true), field('Role', roleWords[member.role], 3), field('As of', dateOf(now), 3)],
    },
  };
}

function stateOf(person: ListedStaff, now: Date): string {
  if (person.closedAt !== null) return `Closed since ${dateOf(person.closedAt)}`;
  if (person.hasPassword) return person.lastSeenAt === null ? 'Has not been here yet' : `Last here ${dateOf(person.lastSeenAt)}`;
  return person.invitationExpiresAt !== null && person.invitationExpiresAt > now ? 'Invited' : 'Invitation ran out: invite again';
}
