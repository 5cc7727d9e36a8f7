import { dayNumber, dayWords, shortDate } from '../core/calendar.js';
import type { FieldPart, TitleField } from '../core/page-parts.js';
import { roleWords } from '../core/permissions.js';
import type { Region } from '../core/syllabus.js';
import type { MePage, PhrasePage, ReturnPage, WelcomePage } from './page-types.js';
import type { Person, Visit } from './sessions.js';
import type { ListedSession } from './store.js';

/** From what accounts knows to what its pages show. */

export const empty: FieldPart = { value: '', why: null };

const regionLabels: Record<Region, string> = {
  uk: 'United Kingdom: 230 V, plugs with a fuse inside',
  eu: 'Elsewhere in Europe: 230 V, no fuse in the plug',
  na: 'North America: 120 V',
};

export const regions = (chosen: string) =>
  Object.entries(regionLabels).map(([value, label]) => ({ value, label, chosen: value === chosen }));

export const field = (label: string, value: string, width: TitleField['width'], name = false): TitleField => ({
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

export const returnPage = (csrf: string, phrase: FieldPart = empty, sharedTicked = false): ReturnPage => ({
  view: 'accounts/return',
  data: { csrf, phrase, words: 7, sharedTicked },
});

/** What the page about oneself shows beside its form. */
export interface MeView {
  sessions: ListedSession[];
  inClasses: boolean;
  slip: { at: Date; by: string | null } | null;
}

export function mePage(
  person: Visit,
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
      sessions: sessions.map(sessionRow),
      onShared: person.shared,
      roleWord: roleWords[person.role],
      titleBlock: [field('Name', person.displayName, 6, true), field('Role', roleWords[person.role], 6)],
    },
  };
}

export const sessionRow = ({ word, here, shared, createdAt, lastSeenAt }: ListedSession) => ({
  word,
  here,
  shared,
  since: dateOf(createdAt),
  seen: dateOf(lastSeenAt),
});

/** Who made a slip, and on which day of the candidate's calendar. */
export const slipPart = (
  { at, by }: { at: Date; by: string | null },
  { timeZone }: Pick<Person, 'timeZone'>,
): { by: string; on: string } => ({
  by: by ?? 'A tutor',
  on: dayWords(dayNumber(at.getTime(), timeZone)),
});

export const dateOf = (date: Date): string => shortDate(date.toISOString().slice(0, 10));
