import { localText } from '../core/local-time.js';
import { dayWords } from '../core/calendar.js';
import { stateOf } from '../core/papers/time.js';
import type { FieldPart } from '../core/page-parts.js';
import { counted } from '../core/words.js';
import type { Person } from '../accounts/index.js';
import { field, nameOf } from '../study/index.js';
import type { RollRow } from './class-store.js';
import { dayOf } from './days.js';
import { extraTimes } from './forms.js';
import { extraWords } from './list-page.js';
import type { ClassPaperPage, ClassPapersPage } from './set-page-types.js';
import type { SettingService, SetView } from './set-service.js';
import type { PaperHead } from './rows.js';

/** A tutor's papers: those that were set, setting another, and one of them with its roll. */

type Overview = Awaited<ReturnType<SettingService['overview']>>;

/** What stands in the form: as typed, or as proposed. */
export interface SetTyped {
  class: string;
  paper: string;
  region: string;
  title: FieldPart;
  versions: FieldPart;
  screen: boolean;
  opens: FieldPart;
  closes: FieldPart;
  paperWhy: string | null;
}

const plain = (value: string): FieldPart => ({ value, why: null });
const hour = 3_600_000;

export const proposed = ({ now, set }: Overview, person: Person): SetTyped => ({
  class: '',
  paper: '',
  region: person.region,
  title: plain(`Class paper ${set.length + 1}`),
  versions: plain('1'),
  screen: true,
  opens: plain(localText(now.getTime(), person.timeZone)),
  closes: plain(localText(now.getTime() + 3 * hour, person.timeZone)),
  paperWhy: null,
});

const regionNames = [
  ['uk', 'United Kingdom, 230 V'],
  ['eu', 'Europe, 230 V'],
  ['na', 'North America, 120 V'],
] as const;

export function classPapersPage(view: Overview, person: Person, csrf: string, id: string, typed: SetTyped): ClassPapersPage {
  const { classes, papers, set, now } = view;
  return {
    view: 'papers/class-papers',
    data: {
      csrf,
      id,
      set: set.map((paper) => ({
        href: `/class-papers/${paper.paperId}`,
        title: paper.title,
        className: paper.className ?? '',
        window: windowWords(paper, now, person),
        handedIn: `${paper.handedIn} of ${Math.max(paper.members, paper.handedIn)}`,
      })),
      form: classes.length === 0 || papers.length === 0 ? null : formPart(view, typed, person),
      titleBlock: [field('Tutor', person.displayName, 6, { name: true }), field('As of', dayWords(dayOf(now, person)), 6)],
    },
  };
}

function formPart({ classes, papers }: Overview, typed: SetTyped, person: Person): ClassPapersPage['data']['form'] {
  const faults = [
    { why: typed.paperWhy, target: 'paper' },
    { why: typed.title.why, target: 'title' },
    { why: typed.versions.why, target: 'versions' },
    { why: typed.opens.why, target: 'opens' },
    { why: typed.closes.why, target: 'closes' },
  ];
  const first = faults.find(({ why }) => why !== null);
  return {
    classes: classes.map(({ classId, name, members }) => ({
      value: String(classId),
      text: `${name} (${counted(members, 'candidate')})`,
      chosen: String(classId) === typed.class,
    })),
    papers: papers.map((paper) => ({
      value: nameOf(paper),
      text: `${paper.blueprint.title}: ${paper.blueprint.minutes} min, ${paper.blueprint.passMark} of ${paper.blueprint.questions} to pass (${paper.packTitle})`,
      chosen: nameOf(paper) === typed.paper,
    })),
    paperWhy: typed.paperWhy,
    regions: regionNames.map(([value, text]) => ({ value, text, chosen: value === typed.region })),
    title: typed.title,
    versions: typed.versions,
    screen: typed.screen,
    opens: typed.opens,
    closes: typed.closes,
    fault: first === undefined ? null : { why: first.why ?? '', target: first.target },
    timeZone: person.timeZone,
  };
}

const clock = (at: Date, person: Person): string =>
  `${dayWords(dayOf(at, person), 'short')}, ${localText(at.getTime(), person.timeZone).slice(11)}`;

function windowWords({ opensAt, closesAt }: PaperHead, now: Date, person: Person): string {
  if (opensAt === null || closesAt === null) return 'on paper only';
  if (now < opensAt) return `opens ${clock(opensAt, person)}`;
  return now < closesAt ? `open until ${clock(closesAt, person)}` : `closed ${clock(closesAt, person)}`;
}

export function classPaperPage(view: SetView, person: Person, csrf: string): ClassPaperPage {
  const { head, roll, now } = view;
  const { blueprint } = head;
  const root = `/class-papers/${head.paperId}`;
  return {
    view: 'papers/class-paper',
    data: {
      csrf,
      title: head.title,
      lead: `${head.className ?? ''}: ${windowWords(head, now, person)}. ${handedInWords(roll)}`,
      close: head.closesAt !== null && head.closesAt > now ? `${root}/close` : null,
      links: [
        { href: `${root}/print`, text: 'Print papers, answer sheets and the key' },
        { href: `${root}/enter`, text: 'Type in results from paper' },
        { href: `${root}/review/1`, text: 'Go through it with the class' },
        { href: `${root}/results.csv`, text: 'Results as a CSV file' },
      ],
      remarked: remarkedWords(roll),
      roll: roll.map((row) => rollPart(row, view)),
      titleBlock: [
        field('Paper', head.title, 6, { name: true }),
        field('Class', head.className ?? '', 6),
        field('Specification', `${counted(blueprint.questions, 'question')}, ${blueprint.minutes} min, pass mark ${blueprint.passMark}`, 6),
        field('Versions', String(head.versions), 2),
        field('Pack', `${head.packTitle} ${head.packVersion}`, 4),
      ],
    },
  };
}

function handedInWords(roll: readonly RollRow[]): string {
  const done = roll.filter(({ sitting }) => sitting !== null && sitting.handedInAt !== null);
  const passed = done.filter(({ sitting }) => sitting?.passed === true).length;
  if (done.length === 0) return 'Nobody has handed in yet.';
  return `${done.length} of ${roll.length} handed in, ${passed} passed.`;
}

function remarkedWords(roll: readonly RollRow[]): string | null {
  const count = roll.filter(({ sitting }) => sitting !== null && sitting.remarkedAt !== null).length;
  return count === 0
    ? null
    : `A key was corrected after this paper was made: ${counted(count, 'paper')} ${count === 1 ? 'was' : 'were'} marked again.`;
}

function rollPart(row: RollRow, { head, now }: SetView): ClassPaperPage['data']['roll'][number] {
  const { sitting, memberId, name, memberExtraTime } = row;
  const root = `/class-papers/${head.paperId}`;
  const done = sitting !== null && sitting.handedInAt !== null;
  const changed =
    sitting !== null && sitting.firstRight !== null && sitting.firstRight !== sitting.right ? ` (was ${sitting.firstRight})` : '';
  const choices = extraTimes.map((percent) => ({ value: String(percent), text: extraWords(percent), chosen: percent === memberExtraTime }));
  return {
    name,
    version: sitting === null ? '' : String(sitting.version),
    state: stateWords(row, now, head.blueprint.questions),
    mark: done ? `${sitting.right ?? 0}${changed}, ${sitting.passed === true ? 'passed' : 'not passed'}` : '',
    extra:
      memberId === null || done
        ? null
        : { action: `${root}/extra-time`, member: String(memberId), choices, label: `Extra time for ${name}` },
    guest: sitting !== null && sitting.guestName !== null ? { action: `${root}/remove-name`, sitting: sitting.sittingId } : null,
  };
}

function stateWords({ sitting, answered }: RollRow, now: Date, questions: number): string {
  if (sitting === null) return 'not begun';
  switch (stateOf(sitting, now.getTime())) {
    case 'handed-in':
      return sitting.way === 'sheet' ? 'on paper' : 'handed in';
    case 'waiting':
      return 'not begun';
    default:
      return `${answered} of ${questions} answered`;
  }
}
