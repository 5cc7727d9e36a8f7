import type { Person } from '../accounts/index.js';
import { classTabs } from '../classes/index.js';
import { isoDay, shortDate, dayNumber } from '../core/calendar.js';
import { counted } from '../core/words.js';
import { field } from '../study/index.js';
import { anchorOf, holdsIn } from './listed.js';
import type { SkillsGridPage } from './page-types.js';
import { dateOf, placeWords } from './parts.js';
import type { SkillsService } from './service.js';

type Grid = Awaited<ReturnType<SkillsService['grid']>>;

/** A class by its skills: when each was seen, or not yet. */
export function gridPage({ head, members, standing, skills, regions, now }: Grid, person: Person): SkillsGridPage {
  const base = `/classes/${head.classId}/skills`;
  const seen = new Map(standing.map((row) => [`${row.personId} ${row.skill}`, row.seenOn]));
  const year = isoDay(dayNumber(now.getTime(), person.timeZone)).slice(0, 4);
  return {
    view: 'skills/grid',
    data: {
      tabs: classTabs(head.classId, '/skills'),
      name: head.name,
      lead:
        skills.length === 0
          ? 'The pack of this class has no practical skills.'
          : 'A date says that a tutor saw all of a skill and signed it. A dash says not yet. Press a name to sign.',
      skills: skills.map(({ skill }) => ({ title: skill.title, place: regions.length > 1 ? placeWords(skill.regions) : null })),
      rows: members.map((member) => {
        const held = skills.filter((row) => holdsIn(row, member.region));
        const signed = held.filter(({ key }) => seen.has(`${member.personId} ${key}`)).length;
        return {
          name: member.name,
          href: `${base}/${member.personId}`,
          cells: skills.map((row) => cellOf(row, member, seen.get(`${member.personId} ${row.key}`) ?? null, base, year)),
          total: `${signed} of ${held.length}`,
        };
      }),
      totals: skills.map((row) => {
        const who = members.filter(({ region }) => holdsIn(row, region));
        return `${who.filter(({ personId }) => seen.has(`${personId} ${row.key}`)).length} of ${who.length}`;
      }),
      blankHref: skills.length === 0 ? null : `${base}/sheet`,
      peopleHref: `/classes/${head.classId}/people`,
      titleBlock: [
        field('Class', head.name, 4, { name: true }),
        field('Candidates', counted(members.length, 'candidate'), 4),
        field('As of', dateOf(now, person), 4),
      ],
    },
  };
}

type Cell = SkillsGridPage['data']['rows'][number]['cells'][number];

/** @param year in which a date needs none */
function cellOf(row: Grid['skills'][number], member: Grid['members'][number], seenOn: string | null, base: string, year: string): Cell {
  if (!holdsIn(row, member.region)) return { href: null, words: 'not asked there', figure: '', year: null };
  const href = `${base}/${member.personId}#${anchorOf(row.key)}`;
  if (seenOn === null) return { href, words: 'not yet', figure: '–', year: null };
  const date = shortDate(seenOn);
  const own = date.endsWith(year) ? null : date.slice(-4);
  return { href, words: `seen on ${date}`, figure: date.slice(0, -5), year: own };
}
