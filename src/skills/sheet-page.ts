import type { Person } from '../accounts/index.js';
import { classTabs } from '../classes/index.js';
import { dayNumber, isoDay, shortDate } from '../core/calendar.js';
import { oldestDays } from '../core/sign-off.js';
import { field } from '../study/index.js';
import { anchorOf } from './listed.js';
import type { SignForm, SkillSheetPage, WithdrawForm } from './page-types.js';
import { askedPart, dateOf, parted, signedPart, withdrawnPart } from './parts.js';
import type { ListedSkill, SkillsService } from './service.js';
import type { Typed } from './typed.js';

type Sheet = Awaited<ReturnType<SkillsService['sheet']>>;
type SignOff = Sheet['signOffs'][number];

/** One candidate's skills: each with its criteria to tick, or as it was signed. */
export function sheetPage(sheet: Sheet, person: Person, csrf: string, newId: () => string, typed: Typed | null): SkillSheetPage {
  const { head, member, skills, signOffs, now } = sheet;
  const base = `/classes/${head.classId}/skills`;
  const frame: Frame = { action: `${base}/${member.personId}`, person, newId, now, typed };
  const { standing, withdrawn } = parted(signOffs, skills);
  const keys = new Set(skills.map(({ key }) => key));
  const shown = skills.map((row) => {
    const signed = standing.find(({ skill }) => skill === row.key);
    const back = withdrawn.filter(({ skill }) => skill === row.key);
    return skillPart(row, signed, back, frame);
  });
  const gone = { standing: standing.filter(({ skill }) => !keys.has(skill)), back: withdrawn.filter(({ skill }) => !keys.has(skill)) };
  const count = shown.filter(({ signed }) => signed !== null).length;
  return {
    view: 'skills/sheet',
    data: {
      tabs: classTabs(head.classId, '/skills'),
      csrf,
      className: head.name,
      name: member.name,
      lead: `${count} of ${skills.length} signed.`,
      fault: typed?.fault ?? null,
      gridHref: base,
      recordHref: `${frame.action}/record`,
      skills: shown,
      gone:
        gone.standing.length + gone.back.length === 0
          ? null
          : {
              signed: gone.standing.map((row) => ({ part: signedPart(row, person), withdraw: withdrawForm(row, frame) })),
              withdrawn: gone.back.map((row) => withdrawnPart(row, person)),
            },
      titleBlock: [
        field('Candidate', member.name, 4, { name: true }),
        field('Class', head.name, 4),
        field('As of', dateOf(now, person), 4),
      ],
    },
  };
}

/** What every form of the page needs. */
interface Frame {
  action: string;
  person: Person;
  newId: () => string;
  now: Date;
  typed: Typed | null;
}

type Part = SkillSheetPage['data']['skills'][number];

function skillPart(row: ListedSkill, signed: SignOff | undefined, back: SignOff[], frame: Frame): Part {
  const { person, typed } = frame;
  const open = typed?.sign?.key === row.key || (signed !== undefined && typed?.withdraw?.id === signed.id);
  return {
    anchor: anchorOf(row.key),
    open,
    state: signed === undefined ? 'not yet' : `signed, seen on ${shortDate(signed.seenOn)}`,
    asked: askedPart(row, false),
    form: signed === undefined ? signForm(row, frame) : null,
    signed:
      signed === undefined
        ? null
        : {
            part: signedPart(signed, person),
            changed: signed.body.criteria.join('\n') !== row.skill.criteria.map(({ text }) => text).join('\n'),
            withdraw: withdrawForm(signed, frame),
          },
    withdrawn: back.map((each) => withdrawnPart(each, person)),
  };
}

function signForm({ key, mark, skill }: ListedSkill, { action, person, newId, now, typed }: Frame): SignForm {
  const anchor = anchorOf(key);
  const given = typed?.sign?.key === key ? typed.sign : null;
  const today = dayNumber(now.getTime(), person.timeZone);
  return {
    action,
    id: given?.id ?? newId(),
    key,
    mark,
    criteria: skill.criteria.map(({ text, why }, at) => ({
      id: `${anchor}-c${at + 1}`,
      name: `c${at + 1}`,
      text,
      why,
      ticked: given?.ticked.includes(at) ?? false,
      missing: given?.missing.includes(at) ?? false,
    })),
    seenOn: {
      id: `${anchor}-day`,
      earliest: isoDay(today - oldestDays),
      latest: isoDay(today),
      value: given?.seenOn.value ?? isoDay(today),
      why: given?.seenOn.why ?? null,
    },
    remarks: { id: `${anchor}-remarks`, value: given?.remarks.value ?? '', why: given?.remarks.why ?? null },
    button: `Sign as ${person.displayName}`,
  };
}

function withdrawForm({ id }: SignOff, { action, typed }: Frame): WithdrawForm {
  const given = typed?.withdraw?.id === id ? typed.withdraw : null;
  return {
    action: `${action}/withdraw`,
    id,
    reason: { id: `reason-${id}`, value: given?.reason.value ?? '', why: given?.reason.why ?? null },
    open: given !== null,
  };
}
