import type { Person } from '../accounts/index.js';
import { candidates, classTabs, daysSince, examField, examWords, seenWords } from '../classes/index.js';
import { dayNumber, dayWords } from '../core/calendar.js';
import { counted, shortened } from '../core/words.js';
import { percent, shownRange } from '../outlook/index.js';
import { field } from '../study/index.js';
import { itemWords } from '../teaching/index.js';
import type { ClassReport } from './service.js';
import type { ClassReportPage } from './page-types.js';

/** How a class stands, on a sheet to file or to hand on. */

export const outlookWords = (chance: { low: number; high: number } | null): string => {
  if (chance === null) return 'too little known';
  const { low, high } = shownRange(chance);
  return high < 0.05 ? 'under 5 %' : `${percent(low)} to ${percent(high)}`;
};

export function classReportPage(report: ClassReport, person: Person): ClassReportPage {
  const { view, plan, mistakes } = report;
  const { head } = view;
  return {
    view: 'reports/class',
    data: {
      tabs: classTabs(head.classId, '/report'),
      name: head.name,
      lead: leadOf(report),
      csvHref: `/classes/${head.classId}/results.csv`,
      papers: papersOf(report).map(({ title }) => title),
      rows: view.rows.map((row) => rowPart(row, report)),
      teach: plan.items.map((item) => ({ title: `${item.objective.code} ${item.objective.title}`, text: itemWords(item) })),
      mistakes: mistakes.map(({ code, stem, names }) => ({ code, stem: shortened(stem), names: names.join(', ') })),
      titleBlock: [
        field('Class', head.name, 4, { name: true }),
        field('Tutors', head.tutors.join(', '), 4),
        field('As of', dayWords(dayNumber(view.now.getTime(), person.timeZone)), 4),
        field('Paper', view.paper === null ? 'none' : view.paper.paper.blueprint.title, 6),
        field('Exam', examField(head), 6),
      ],
    },
  };
}

function leadOf({ view }: ClassReport): string {
  const { head, rows, paper } = view;
  if (rows.length === 0) return 'Nobody is in this class yet.';
  const title = paper === null ? 'a paper' : `“${paper.paper.blueprint.title}”`;
  return `${candidates(rows.length)}; ${examWords(head)}. The outlook is the chance of passing ${title} if it were sat now; it is an estimate and no promise.`;
}

/** Papers that somebody handed in, the earliest first. */
export function papersOf({ marks }: Pick<ClassReport, 'marks'>): { paperId: string; title: string }[] {
  return marks.filter(({ paperId }, index) => marks.findIndex((other) => other.paperId === paperId) === index);
}

function rowPart(row: ClassReport['view']['rows'][number], report: ClassReport): ClassReportPage['data']['rows'][number] {
  const firsts = report.firsts.find(({ personId }) => personId === row.personId);
  const region = (regions: readonly string[] | undefined): boolean => regions === undefined || regions.includes(row.region);
  const wanted = report.skills.filter(({ skill }) => region(skill.regions));
  const signed = report.signed.filter(
    ({ personId, skill }) => personId === row.personId && wanted.some((each) => `${each.pack}/${each.skill.id}` === skill),
  );
  return {
    name: row.name,
    outlook: outlookWords(row.chance),
    answers: counted(row.answers, 'answer'),
    firsts: firsts === undefined ? '–' : `${firsts.right} of ${firsts.met}`,
    seen: seenWords(daysSince(row.lastSeenAt, row.today, row.timeZone)),
    marks: papersOf(report).map(({ paperId }) => {
      const mark = report.marks.find((each) => each.paperId === paperId && each.personId === row.personId);
      return mark === undefined ? '–' : `${mark.right} of ${mark.questions}, ${mark.passed ? 'passed' : 'not passed'}`;
    }),
    skills: wanted.length === 0 ? '–' : `${signed.length} of ${wanted.length}`,
    sure: String(row.surelyWrong),
  };
}
