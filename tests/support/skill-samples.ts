import type { Person } from '../../src/accounts/index.js';
import type { Skill } from '../../src/core/skill.js';
import { gridPage } from '../../src/skills/grid-page.js';
import { blankPage, ownPage, recordPage } from '../../src/skills/print-pages.js';
import { sheetPage } from '../../src/skills/sheet-page.js';
import { signBack, withdrawBack } from '../../src/skills/typed.js';
import { smallSkills } from './small-skills.js';

/** The pages of practical skills, made by their builders from invented services' answers. */

const now = new Date('2026-11-26T19:00:00Z');
const tutor: Person = {
  id: 3,
  displayName: 'H. <Vane>',
  role: 'tutor',
  timeZone: 'Europe/London',
  region: 'uk',
  sessionHash: Buffer.alloc(32),
};
const head = {
  classId: 7,
  name: 'Thursday <beginners>',
  examOn: null,
  paper: null,
  meetsOn: 4,
  meetsAt: '19:30',
  timeZone: 'Europe/London',
  members: 2,
  tutors: ['H. <Vane>', 'L. Sedgewick'],
  ended: false,
};
const listed = (skill: Skill) => ({
  pack: 'small',
  packTitle: 'Small pack',
  skill,
  caution: { id: 'mains', sign: 'electric' as const, text: 'Leave fixed wiring to an electrician; keep to 3 A.' },
  objectives: [{ code: 'AA-01', title: 'Objective AA-01' }],
  sources: 'Book; Common practice',
  key: `small/${skill.id}`,
  mark: 'f00d',
});
const skills = smallSkills.map(listed);
const british = skills.filter(({ skill }) => skill.id !== 'panel');
const members = [
  { personId: 11, name: 'Bartholomew Featherstonehaugh-Wobblington', region: 'uk' as const },
  { personId: 12, name: 'P. <Moss>', region: 'na' as const },
];
const standing = [
  { personId: 11, skill: 'small/lead', seenOn: '2026-11-19' },
  { personId: 12, skill: 'small/panel', seenOn: '2025-12-30' },
];
const signed = {
  id: '0b9f1c1e-6f0a-4a53-9d6f-0d6f2a3f1b01',
  personId: 11,
  pack: 'small',
  skill: 'small/lead',
  body: { packTitle: 'Small pack', title: 'Look over a lead', criteria: ['Unplugs it.', 'Looks along <all> of it.', 'Labels it.'] },
  remarks: 'Slow and careful.\nFound the <cut> by 230 V tape.',
  seenOn: '2026-11-19',
  signerName: 'L. <Sedgewick>',
  signedAt: new Date('2026-11-20T20:00:00Z'),
  withdrawnAt: null,
  withdrawnBy: null,
  reason: null,
};
const withdrawn = {
  ...signed,
  id: '0b9f1c1e-6f0a-4a53-9d6f-0d6f2a3f1b02',
  skill: 'small/plug',
  body: { ...signed.body, title: 'Wire a plug' },
  remarks: '',
  withdrawnAt: new Date('2026-11-24T20:00:00Z'),
  withdrawnBy: 'H. <Vane>',
  reason: 'Signed for <somebody> else.',
};
const old = {
  ...signed,
  id: '0b9f1c1e-6f0a-4a53-9d6f-0d6f2a3f1b03',
  skill: 'small/gone',
  body: { ...signed.body, title: 'Gone <from> the pack' },
};
const oldWithdrawn = { ...withdrawn, id: '0b9f1c1e-6f0a-4a53-9d6f-0d6f2a3f1b04', skill: 'small/gone' };

const sheet = {
  head,
  member: members[0] as (typeof members)[number],
  skills: british,
  signOffs: [signed, withdrawn, old, oldWithdrawn],
  now,
};
const grid = { head, members, standing, skills, regions: ['uk' as const, 'na' as const], now };
let made = 0;
const newId = (): string => `0b9f1c1e-6f0a-4a53-9d6f-${String((made += 1)).padStart(12, '0')}`;
const csrf = 'dGhpcyBpcyBhIHRva2Vu-_.1';
const wish = { id: newId(), skill: 'small/plug', ticked: [0, 2], seenOn: '2027-01-01', remarks: 'All but <one>.' };
const refused = signBack(wish, {
  state: 'refused',
  reading: {
    ok: false,
    missing: [1, 3],
    faults: [
      { field: 'criteria', why: '2 criteria are not ticked.' },
      { field: 'seenOn', why: 'That day has not come yet.' },
      { field: 'remarks', why: 'Too long.' },
    ],
  },
});

export const skillPages = [
  { name: 'skills', title: 'Skills', layout: 'wide', page: gridPage(grid, tutor) },
  { name: 'skills-nobody', title: 'Skills', layout: 'wide', page: gridPage({ ...grid, members: [], standing: [] }, tutor) },
  { name: 'skills-none', title: 'Skills', layout: 'wide', page: gridPage({ ...grid, skills: [] }, tutor) },
  { name: 'skill-sheet', title: 'Skills', layout: 'one', page: sheetPage(sheet, tutor, csrf, newId, null) },
  { name: 'skill-sheet-fault', title: 'Not signed', layout: 'one', page: sheetPage(sheet, tutor, csrf, newId, refused) },
  {
    name: 'skill-sheet-already-fault',
    title: 'Not signed',
    layout: 'one',
    page: sheetPage(
      sheet,
      tutor,
      csrf,
      newId,
      signBack({ ...wish, skill: 'small/lead' }, { state: 'already', by: 'L. <Sedgewick>', seenOn: '2026-11-19' }),
    ),
  },
  {
    name: 'skill-sheet-changed-fault',
    title: 'Not signed',
    layout: 'one',
    page: sheetPage(sheet, tutor, csrf, newId, signBack(wish, { state: 'changed' })),
  },
  {
    name: 'skill-sheet-withdraw-fault',
    title: 'Not withdrawn',
    layout: 'one',
    page: sheetPage(sheet, tutor, csrf, newId, withdrawBack(signed.id, '', 'Write why.')),
  },
  {
    name: 'skill-sheet-none',
    title: 'Skills',
    layout: 'one',
    page: sheetPage({ ...sheet, skills: [], signOffs: [] }, tutor, csrf, newId, null),
  },
  { name: 'skill-record', title: 'Record', layout: 'one', page: recordPage(sheet, tutor) },
  { name: 'skill-record-none', title: 'Record', layout: 'one', page: recordPage({ ...sheet, signOffs: [] }, tutor) },
  { name: 'skill-blank', title: 'Form', layout: 'one', page: blankPage(grid, tutor) },
  { name: 'skill-blank-none', title: 'Form', layout: 'one', page: blankPage({ ...grid, skills: [] }, tutor) },
  {
    name: 'skills-own',
    title: 'Practical skills',
    layout: 'one',
    page: ownPage({ signOffs: sheet.signOffs, skills: british, now }, tutor, false),
  },
  { name: 'skills-own-none', title: 'Practical skills', layout: 'one', page: ownPage({ signOffs: [], skills: [], now }, tutor, true) },
] as const;
