import type { Person } from '../accounts/index.js';
import { dayNumber, dayWords, shortDate } from '../core/calendar.js';
import type { CertaintyRow } from '../core/progress/sureness.js';
import { counted } from '../core/words.js';
import { percent, shownRange, tenths } from '../outlook/index.js';
import { field } from '../study/index.js';
import type { OwnReport } from './service.js';
import type { OwnReportPage } from './page-types.js';

/** A candidate's own report, to print and to show to whom one likes. */

const certaintyWords = { sure: 'Sure', fairly: 'Fairly sure', guessing: 'Guessing' } as const;

export function ownReportPage({ now, progress, outlook, marks, signed }: OwnReport, person: Person): OwnReportPage {
  const day = dayNumber(now.getTime(), person.timeZone);
  const minutes = Math.round(progress.time.reduce((sum, { seconds }) => sum + seconds, 0) / 60);
  const answers = progress.time.reduce((sum, each) => sum + each.answers, 0);
  return {
    view: 'reports/own',
    data: {
      name: person.displayName,
      outlook: outlookSentence(outlook),
      topics: progress.ladders.map(({ title, rungs }) => {
        const count = (footing: string): string => String(rungs.filter((rung) => rung.footing === footing).length);
        return { title, rungs: `${count('firm')} firm, ${count('loose')} loose, ${count('none')} not yet` };
      }),
      papers: marks.map(({ title, right, questions, passMark, passed, handedInAt }) => ({
        title,
        day: dayWords(dayNumber(handedInAt.getTime(), person.timeZone), 'short'),
        mark: `${right} of ${questions}, ${passed ? 'passed' : `not passed (${passMark} to pass)`}`,
      })),
      skills: signed.map(({ title, seenOn, signer }) => ({ title, seen: `${shortDate(seenOn)}, by ${signer}` })),
      sureness: progress.certainty.map(surePart),
      time:
        answers === 0
          ? 'No answers yet.'
          : `${counted(answers, 'answer')} on ${counted(progress.time.length, 'day')}, about ${counted(minutes, 'minute')} in all.`,
      titleBlock: [
        field('Candidate', person.displayName, 6, { name: true }),
        field('As of', dayWords(day), 6),
        field('What this is', 'a candidate’s own note, and no certificate', 12),
      ],
    },
  };
}

function outlookSentence({ tomorrow, paper, met, needed }: OwnReport['outlook']): string {
  if (paper === null) return 'None of the packs here has the make-up of a paper.';
  if (tomorrow === null) return `Too few answers yet: ${met} of the ${needed} questions that an outlook needs.`;
  const { low, high } = shownRange(tomorrow);
  const { questions, passMark } = paper.blueprint;
  return `If a paper of ${questions} questions with ${passMark} to pass were sat tomorrow: ${tenths(tomorrow)} people who answer like this would pass (${percent(low)} to ${percent(high)}).`;
}

function surePart({ certainty, answers, right, share }: CertaintyRow): OwnReportPage['data']['sureness'][number] {
  const limits = share === null ? '' : `, ${Math.round(share.low * 100)} to ${Math.round(share.high * 100)} % with 95 % certainty`;
  return { words: certaintyWords[certainty], share: answers === 0 ? 'never said' : `${right} of ${answers} right${limits}` };
}
