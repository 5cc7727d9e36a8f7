import { dayNumber, dayWords } from '../core/calendar.js';
import type { RecordedCertainty } from '../core/questions/schema.js';
import { counted, shortened } from '../core/words.js';
import { field } from '../study/index.js';
import type { Person } from '../accounts/index.js';
import type { CellView } from './cell-service.js';
import type { CellPage } from './page-types.js';
import { classTabs } from '../classes/index.js';

/** One candidate in one topic: the answers behind a figure of the grid. */

const saidSo: Readonly<Record<RecordedCertainty, string>> = {
  sure: ', sure',
  fairly: ', fairly sure',
  guessing: ', guessing',
  unsaid: '',
};

export function cellPage({ head, member, topic, chance, now, questions, unmet }: CellView, person: Person): CellPage {
  return {
    view: 'teaching/cell',
    data: {
      tabs: classTabs(head.classId, ''),
      heading: `${member.name}: ${topic.title}`,
      lead: leadOf(questions, unmet.length, chance),
      backHref: `/classes/${head.classId}`,
      rows: questions.map(({ questionId, code, stem, recall, surelyWrong, answers }) => ({
        href: `/bank/questions/${questionId}`,
        code,
        stem: shortened(stem),
        recall: `${Math.round(recall * 100)} %`,
        surelyWrong,
        answers: answers.map(({ day, right, certainty, said }) => {
          const how = right ? 'right' : `not right${said === '' ? '' : `: ${said}`}`;
          return `${dayWords(day, 'short')}: ${how}${saidSo[certainty]}`;
        }),
      })),
      unmet: unmet.map(({ questionId, code, stem }) => ({ href: `/bank/questions/${questionId}`, code, stem: shortened(stem) })),
      titleBlock: [
        field('Candidate', member.name, 4, { name: true }),
        field('Class', head.name, 4),
        field('As of', dayWords(dayNumber(now.getTime(), person.timeZone)), 4),
      ],
    },
  };
}

function leadOf(questions: CellView['questions'], unmet: number, chance: number | null): string {
  const met = questions.length;
  const never = unmet === 0 ? '' : ` ${counted(unmet, 'question')} ${unmet === 1 ? 'was' : 'were'} never asked.`;
  if (met === 0) return `Nothing of this topic has been asked yet.${never}`;
  const mean = questions.reduce((sum, { recall }) => sum + recall, 0) / met;
  const any = chance === null ? '' : `Chance of being right on any question of the topic: ${Math.round(chance * 100)} %. `;
  return `${any}Of the ${counted(met, 'question')} asked so far about ${Math.round(mean * 100)} % would be recalled today, since each was explained after it was answered; the least certain stand first.${never}`;
}
