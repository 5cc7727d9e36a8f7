import { dayNumber, dayWords, shortDate } from '../core/calendar.js';
import type { FieldPart, TitleField } from '../core/page-parts.js';
import { roleWords, type Role } from '../core/permissions.js';
import type { Region } from '../core/syllabus.js';
import type { MePage, PhrasePage, ReturnPage, SetPasswordPage, SignInPage, StaffPage, WelcomePage } from './page-types.js';
import type { Person } from './sessions.js';

/** From what accounts knows to what its pages show. */

const empty: FieldPart = { value: '', why: null };

const regionLabels: Record<Region, string> = {
  uk: 'United Kingdom: 230 V, plugs with a fuse inside',
  eu: 'Elsewhere in Europe: 230 V, no fuse in the plug',
  na: 'North America: 120 V',
};

export const regions = (chosen: string) =>
  Object.entries(regionLabels).map(([value, label]) => ({ value, label, chosen: value === chosen }));

const field = (label: string, value: string, width: TitleField['width'], name = false): TitleField => ({
  label,
  value,
  width,
  name,
  id: false,
  href: null,
});

export interface Bank {
  packs: { title: string; version: string; licence: string; questions: number; families: number }[];
  objectives: number;
  topics: number;
}

export function welcomePage(bank: Bank, csrf: string, startToken: string, name: FieldPart = empty, region = 'uk'): WelcomePage {
  const questions = bank.packs.reduce((sum, pack) => sum + pack.questions + pack.families, 0);
  const packs = bank.packs.map((pack) => `${pack.title} ${pack.version}`).join(', ');
  return {
    view: 'home/welcome',
    data: {
      csrf,
      startToken,
      name,
      region,
      regions: regions(region),
      questions,
      objectives: bank.objectives,
      topics: bank.topics,
      packs,
      titleBlock: [field('Pack', packs, 6, true), field('Licence', bank.packs.map((pack) => pack.licence).join(', '), 6)],
    },
  };
}

export function phrasePage(person: { displayName: string }, words: string[], first: boolean, host: string, day: string): PhrasePage {
  return {
    view: 'accounts/phrase',
    data: {
      name: person.displayName,
      words,
      first,
      returnHref: `${host}/return`,
      titleBlock: [field('Belongs to', person.displayName, 6, true), field('Made on', day, 6), field('Come back at', `${host}/return`, 12)],
    },
  };
}

export const returnPage = (csrf: string, phrase: FieldPart = empty): ReturnPage => ({
  view: 'accounts/return',
  data: { csrf, phrase, words: 7 },
});

export const signInPage = (csrf: string, name: FieldPart = empty, why: string | null = null): SignInPage => ({
  view: 'accounts/sign-in',
  data: { csrf, name, why },
});

export function setUpPage(csrf: string, action: string, name: FieldPart = empty, passwordWhy: string | null = null): SetPasswordPage {
  return {
    view: 'accounts/set-password',
    data: {
      csrf,
      action,
      heading: 'Set up this server',
      lead: 'Nobody looks after this server yet. Choose a name and a password, and you are its administrator: you can then invite tutors.',
      name,
      nameFixed: false,
      passwordWhy,
    },
  };
}

export function invitationPage(csrf: string, action: string, name: string, passwordWhy: string | null = null): SetPasswordPage {
  return {
    view: 'accounts/set-password',
    data: {
      csrf,
      action,
      heading: 'Choose your password',
      lead: 'You have been invited to this server. Choose a password; from then on you sign in with your name and that password.',
      name: { value: name, why: null },
      nameFixed: true,
      passwordWhy,
    },
  };
}

interface SessionSeen {
  idHash: Uint8Array;
  createdAt: Date;
  lastSeenAt: Date;
}

/** What the page about oneself shows beside its form. */
export interface MeView {
  sessions: SessionSeen[];
  inClasses: boolean;
  slip: { at: Date; by: string | null } | null;
}

export function mePage(
  person: Person,
  { sessions, inClasses, slip }: MeView,
  csrf: string,
  saved: boolean,
  name: FieldPart = { value: person.displayName, why: null },
  timeZone: FieldPart = { value: person.timeZone, why: null },
): MePage {
  return {
    view: 'accounts/me',
    data: {
      csrf,
      name,
      timeZone,
      regions: regions(person.region),
      candidate: person.role === 'candidate',
      inClasses,
      slip: slip === null ? null : slipPart(slip, person),
      saved,
      sessions: sessions.map((session) => ({
        here: person.sessionHash.equals(session.idHash),
        since: dateOf(session.createdAt),
        seen: dateOf(session.lastSeenAt),
      })),
      roleWord: roleWords[person.role],
      titleBlock: [field('Name', person.displayName, 6, true), field('Role', roleWords[person.role], 6)],
    },
  };
}

/** Who made a slip, and on which day of the candidate's calendar. */
export const slipPart = (
  { at, by }: { at: Date; by: string | null },
  { timeZone }: Pick<Person, 'timeZone'>,
): { by: string; on: string } => ({
  by: by ?? 'A tutor',
  on: dayWords(dayNumber(at.getTime(), timeZone)),
});

const dateOf = (date: Date): string => shortDate(date.toISOString().slice(0, 10));

interface StaffSeen {
  displayName: string;
  role: string;
  passwordHash: string | null;
  invitationExpiresAt: Date | null;
  lastSeenAt: Date | null;
}

export function staffPage(
  people: StaffSeen[],
  now: Date,
  csrf: string,
  invitation: StaffPage['data']['invitation'] = null,
  name: FieldPart = empty,
  role = 'tutor',
): StaffPage {
  return {
    view: 'accounts/staff',
    data: {
      csrf,
      people: people.map((person) => ({ name: person.displayName, role: roleWords[person.role as Role], state: stateOf(person, now) })),
      name,
      roles: (['tutor', 'administrator'] as const).map((value) => ({ value, label: roleWords[value], chosen: value === role })),
      invitation,
      titleBlock: [field('Staff', String(people.length), 6), field('As of', dateOf(now), 6)],
    },
  };
}

function stateOf(person: StaffSeen, now: Date): string {
  if (person.passwordHash !== null) return person.lastSeenAt === null ? 'Has not been here yet' : `Last here ${dateOf(person.lastSeenAt)}`;
  return person.invitationExpiresAt !== null && person.invitationExpiresAt > now ? 'Invited' : 'Invitation ran out: invite again';
}
