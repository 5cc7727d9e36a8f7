import type { Person } from '../accounts/index.js';
import { classTabs } from '../classes/index.js';
import { field } from '../study/index.js';
import type { BlankSheetPage, OwnSkillsPage, SkillRecordPage } from './page-types.js';
import { askedPart, dateOf, parted, signedPart, withdrawnPart } from './parts.js';
import type { SkillsService } from './service.js';

/** What goes on paper: the record of one candidate, an empty form to take along, and a candidate's own page. */

type Sheet = Awaited<ReturnType<SkillsService['sheet']>>;

export function recordPage({ head, member, skills, signOffs, now }: Sheet, person: Person): SkillRecordPage {
  const { standing, withdrawn } = parted(signOffs, skills);
  const done = new Set(standing.map(({ skill }) => skill));
  const open = skills.filter(({ key }) => !done.has(key));
  return {
    view: 'skills/record',
    data: {
      tabs: classTabs(head.classId, '/skills'),
      className: head.name,
      name: member.name,
      lead: `${skills.length - open.length} of ${skills.length} skills seen and signed.`,
      backHref: `/classes/${head.classId}/skills/${member.personId}`,
      signed: standing.map((row) => signedPart(row, person)),
      withdrawn: withdrawn.map((row) => withdrawnPart(row, person)),
      open: open.map(({ skill }) => skill.title),
      titleBlock: [
        field('Candidate', member.name, 4, { name: true }),
        field('Class', head.name, 4),
        field('As of', dateOf(now, person), 4),
        field('Tutors', head.tutors.join(', '), 12),
      ],
    },
  };
}

export function blankPage({ head, skills, regions, now }: Awaited<ReturnType<SkillsService['grid']>>, person: Person): BlankSheetPage {
  return {
    view: 'skills/blank',
    data: {
      tabs: classTabs(head.classId, '/skills'),
      className: head.name,
      backHref: `/classes/${head.classId}/skills`,
      skills: skills.map((row) => askedPart(row, regions.length > 1)),
      titleBlock: [
        field('Class', head.name, 6, { name: true }),
        field('Pack', [...new Set(skills.map(({ packTitle }) => packTitle))].join(', '), 3),
        field('Printed on', dateOf(now, person), 3),
      ],
    },
  };
}

/** @param all with everything open, as it prints */
export function ownPage({ signOffs, skills, now }: Awaited<ReturnType<SkillsService['own']>>, person: Person, all: boolean): OwnSkillsPage {
  const { standing, withdrawn } = parted(signOffs, skills);
  const done = new Set(standing.map(({ skill }) => skill));
  const open = skills.filter(({ key }) => !done.has(key)).map((row) => askedPart(row, false));
  return {
    view: 'skills/own',
    data: {
      lead:
        skills.length === 0
          ? 'The packs here have no practical skills for where you live.'
          : `${skills.length - open.length} of ${skills.length} seen and signed by a tutor.`,
      all,
      allHref: standing.length + open.length === 0 ? null : all ? '/skills' : '/skills?all=yes',
      allLabel: all ? 'Close all again' : 'Open all of them, to read or print',
      open,
      signed: standing.map((row) => signedPart(row, person)),
      withdrawn: withdrawn.map((row) => withdrawnPart(row, person)),
      titleBlock: [field('Candidate', person.displayName, 6, { name: true }), field('As of', dateOf(now, person), 6)],
    },
  };
}
