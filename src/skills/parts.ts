import { dayNumber, isoDay, shortDate } from '../core/calendar.js';
import { regionWords } from '../core/syllabus.js';
import { counted } from '../core/words.js';
import type { AskedPart, SignedPart, WithdrawnPart } from './page-types.js';
import type { ListedSkill } from './service.js';
import type { SignOffRow } from './store.js';

/** What several pages of practical skills are made of. */

interface Viewer {
  timeZone: string;
}

/** The day of a moment in somebody's own calendar, as 26 Nov 2026. */
export const dateOf = (at: Date, { timeZone }: Viewer): string => shortDate(isoDay(dayNumber(at.getTime(), timeZone)));

/** @param placed whether it is said where the skill holds */
export function askedPart({ skill, caution, objectives, sources }: ListedSkill, placed: boolean): AskedPart {
  return {
    title: skill.title,
    minutes: counted(skill.minutes, 'minute'),
    place: placed ? placeWords(skill.regions) : null,
    brings: skill.brings,
    showing: skill.showing,
    criteria: skill.criteria,
    stop: skill.stop ?? null,
    caution: { sign: caution.sign, text: caution.text },
    objectives: objectives.map(({ code, title }) => `${code} ${title}`).join('; '),
    sources,
  };
}

export const placeWords = (regions: ListedSkill['skill']['regions']): string | null =>
  regions === undefined ? null : regions.map((region) => regionWords[region]).join('; ');

export function signedPart(row: SignOffRow, viewer: Viewer): SignedPart {
  return {
    title: row.body.title,
    criteria: row.body.criteria,
    words: signedWords(row, viewer),
    remarks: row.remarks === '' ? null : row.remarks,
  };
}

export function withdrawnPart(row: SignOffRow, viewer: Viewer): WithdrawnPart {
  const on = row.withdrawnAt === null ? '' : dateOf(row.withdrawnAt, viewer);
  return {
    title: row.body.title,
    words: signedWords(row, viewer),
    withdrawn: `Withdrawn on ${on} by ${row.withdrawnBy ?? ''}: ${row.reason ?? ''}`,
  };
}

function signedWords({ seenOn, signedAt, signerName }: SignOffRow, viewer: Viewer): string {
  const [seen, signed] = [shortDate(seenOn), dateOf(signedAt, viewer)];
  return seen === signed ? `Seen and signed on ${seen} by ${signerName}.` : `Seen on ${seen}, signed on ${signed} by ${signerName}.`;
}

/** What stands, and what was withdrawn, in the order of the skills; those of skills that are gone come last. */
export function parted<T extends SignOffRow>(rows: readonly T[], skills: readonly { key: string }[]): { standing: T[]; withdrawn: T[] } {
  const places = new Map(skills.map(({ key }, at) => [key, at]));
  const placeOf = ({ skill }: SignOffRow): number => places.get(skill) ?? skills.length;
  const inOrder = [...rows].sort((a, b) => placeOf(a) - placeOf(b) || a.signedAt.getTime() - b.signedAt.getTime());
  return {
    standing: inOrder.filter(({ withdrawnAt }) => withdrawnAt === null),
    withdrawn: inOrder.filter(({ withdrawnAt }) => withdrawnAt !== null),
  };
}
