import { regionIds, regionWords } from '../core/syllabus.js';
import { localText } from '../core/local-time.js';
import { dayWords } from '../core/calendar.js';
import type { FieldPart } from '../core/page-parts.js';
import { counted } from '../core/words.js';
import type { Person } from '../accounts/index.js';
import { field, nameOf } from '../study/index.js';
import { dayOf } from './days.js';
import type { ClassPapersPage } from './set-page-types.js';
import type { SettingService } from './set-service.js';
import { windowWords } from './window-words.js';

/** A tutor's papers: those that were set, and setting another. */

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
    regions: regionIds.map((value) => ({ value, text: regionWords[value], chosen: value === typed.region })),
    title: typed.title,
    versions: typed.versions,
    screen: typed.screen,
    opens: typed.opens,
    closes: typed.closes,
    fault: first === undefined ? null : { why: first.why ?? '', target: first.target },
    timeZone: person.timeZone,
  };
}
