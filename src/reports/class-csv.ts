import { writeCsv } from '../core/csv.js';
import { dayNumber, isoDay } from '../core/calendar.js';
import { levelOf } from '../core/classes/level.js';
import { shownRange } from '../outlook/index.js';
import { papersOf } from './class-page.js';
import type { ClassReport } from './service.js';

/**
 * The class as a table for a spreadsheet: one line a candidate. Chances are shares from 0 to 1, days are written as 2026-11-26, and an
 * empty cell means that nothing can be told.
 */
export function classCsv(report: ClassReport): string {
  const papers = papersOf(report);
  return writeCsv([headings(report, papers), ...report.view.rows.map((row) => line(row, report, papers))]);
}

type Papers = ReturnType<typeof papersOf>;

const headings = ({ view }: ClassReport, papers: Papers): string[] => [
  'candidate',
  'joined',
  'last_here',
  'answers',
  'questions_met',
  'questions',
  'first_answers_right',
  'sure_and_wrong',
  'outlook_low',
  'outlook_high',
  ...view.topics.flatMap(({ code }) => [`${code}_chance`, `${code}_recall`, `${code}_met`, `${code}_questions`]),
  ...papers.flatMap(({ title }) => [`${title}: right`, `${title}: questions`, `${title}: passed`]),
  'skills_signed',
];

const share = (value: number | null | undefined): string => (value === null || value === undefined ? '' : value.toFixed(3));

function line(row: ClassReport['view']['rows'][number], report: ClassReport, papers: Papers): string[] {
  const dayOf = (at: Date): string => isoDay(dayNumber(at.getTime(), row.timeZone));
  return [
    row.name,
    dayOf(row.joinedAt),
    row.lastSeenAt === null ? '' : dayOf(row.lastSeenAt),
    String(row.answers),
    String(row.met),
    String(row.of),
    String(report.firsts.find(({ personId }) => personId === row.personId)?.right ?? 0),
    String(row.surelyWrong),
    // As the pages tell it: what the model says above the cap is not told.
    share(row.chance === null ? null : shownRange(row.chance).low),
    share(row.chance === null ? null : shownRange(row.chance).high),
    ...report.view.topics.flatMap(({ code }) => {
      const cell = row.cells.get(code);
      const [met, of] = [cell?.met ?? 0, cell?.of ?? 0];
      const chance = row.topics.get(code) ?? null;
      const told = ['none', 'few'].includes(levelOf({ chance, met, of })) ? null : chance;
      return [share(told), share(cell?.recall), String(met), String(of)];
    }),
    ...papers.flatMap(({ paperId }) => {
      const mark = report.marks.find((each) => each.paperId === paperId && each.personId === row.personId);
      return mark === undefined ? ['', '', ''] : [String(mark.right), String(mark.questions), mark.passed ? 'yes' : 'no'];
    }),
    String(report.signed.filter(({ personId }) => personId === row.personId).length),
  ];
}
