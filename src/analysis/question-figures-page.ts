import type { Person } from '../accounts/index.js';
import { classTabs } from '../classes/index.js';
import { dayNumber, dayWords, isoDay, shortDate } from '../core/calendar.js';
import { intervalWords, twoPlaces } from '../core/analysis/figure-words.js';
import { answeredPart, keyWords } from '../core/tasks/answered-part.js';
import { field } from '../study/index.js';
import { queryLinks, scopeLinks, signParts } from './class-questions-page.js';
import { shownChoices, type ShownChoice } from './question-choices.js';
import type { QuestionFiguresPage } from './question-page-types.js';
import type { QuestionView } from './question-service.js';
import { fewestHeld } from './question-verdict.js';
import { firstSightWords, groupWords, laterWords, restWords, scopeWords, shareWords } from './question-words.js';

/** One question whole: what it says, what was chosen, and what that is worth. */

type Data = QuestionFiguresPage['data'];

export function questionFiguresPage(view: QuestionView, person: Person): QuestionFiguresPage {
  const { head, scope, outline, put, now, seen } = view;
  const list = `/classes/${head.classId}/questions`;
  const shown = shownChoices(view.bank, seen?.figures.choices ?? [], seen?.parts ?? []);
  const typed = put.task.kind === 'number' || (put.task.kind === 'choice' && put.task.draw !== null);
  return {
    view: 'analysis/question-figures',
    data: {
      className: head.name,
      code: outline.code,
      tabs: classTabs(head.classId, '/questions'),
      back: `${list}?of=${scope}`,
      scopes: scopeLinks(`${list}/${outline.questionId}`, scope),
      stem: put.stem,
      drawing: answeredPart(put.task, put.drawing, null).drawing,
      fact: typed ? `${keyWords(put.task)} The numbers are fresh each time; these are one set of them.` : null,
      lead: seen === null ? '' : `${firstSightWords(seen.figures)}. ${seenWords(seen)}`.trim(),
      hidden:
        seen === null
          ? 'Fewer than five people beyond your classes have answered this question, and what they answered could be worked out. Look at this class by itself.'
          : null,
      signs: seen === null ? [] : signParts(seen),
      choices: choicesPart(view, shown),
      sureness: surenessPart(view, shown),
      ...figuresPart(seen),
      revision: revisionWords(view, person),
      queries: queryLinks(view),
      bankHref: `/bank/questions/${outline.questionId}`,
      titleBlock: [
        field('Objective', `${outline.objective} ${outline.objectiveTitle}`, 8, { name: true }),
        field('Question', outline.code, 4, { id: true }),
        field('Class', head.name, 4),
        field('Answers of', scopeWords[scope], 4),
        field('As of', dayWords(dayNumber(now.getTime(), person.timeZone)), 4),
      ],
    },
  };
}

/** What the figures may be taken for. */
function seenWords({ figures, verdict }: NonNullable<QuestionView['seen']>): string {
  if (figures.n === 0) return 'As answers come in, the figures stand here.';
  if (verdict.signs.some(({ severity }) => severity === 'look')) return '';
  return verdict.tooFew ? 'Too few answers to tell whether anything is wrong with it.' : 'No sign that anything is wrong with it.';
}

function figuresPart(seen: QuestionView['seen']): Pick<Data, 'later' | 'rest' | 'groups'> {
  if (seen === null) return { later: '', rest: '', groups: null };
  const { figures, verdict } = seen;
  const groups = groupWords(figures, fewestHeld);
  const word =
    verdict.quality === null ? '' : ` ${verdict.quality.provisional ? 'For the time being: ' : 'In a word: '}${verdict.quality.word}.`;
  return {
    later: laterWords(figures.later),
    rest: restWords(figures, fewestHeld),
    groups: groups === null ? null : `${groups}${word}`,
  };
}

function choicesPart({ seen }: QuestionView, shown: readonly ShownChoice[]): Data['choices'] {
  if (shown.length === 0) return null;
  const rest = (seen?.figures.held ?? 0) >= fewestHeld && shown.some(({ figures }) => figures !== null);
  return {
    columns: { parts: shown.some(({ part }) => part !== null), rest },
    rows: shown.map((choice) => ({
      letter: choice.letter,
      text: choice.text,
      mark: choice.mark,
      chosen: chosenWords(choice),
      rest: rest ? choiceRest(choice) : '',
    })),
  };
}

const levels = [
  ['sure', 'Sure'],
  ['fairly', 'Fairly sure'],
  ['guessing', 'Guessing'],
  ['unsaid', 'Not asked'],
] as const;

function surenessPart({ seen }: QuestionView, shown: readonly ShownChoice[]): Data['sureness'] {
  if (seen === null || seen.figures.n === 0) return null;
  const { certainty } = seen.figures;
  const said = levels.filter(([level]) => certainty[level].of > 0);
  const chosen = shown.flatMap(({ letter, text, mark, figures }) => (figures === null ? [] : [{ name: letter ?? text, mark, figures }]));
  const rows =
    chosen.length > 0
      ? chosen.map(({ name, mark, figures }) => ({ name, mark, counts: said.map(([level]) => String(figures.certainty[level])) }))
      : [
          { name: 'Right', mark: '', counts: said.map(([level]) => String(certainty[level].right)) },
          { name: 'Not right', mark: '', counts: said.map(([level]) => String(certainty[level].of - certainty[level].right)) },
        ];
  return { levels: said.map(([, name]) => name), rows };
}

function chosenWords({ figures, part }: ShownChoice): string {
  if (part !== null) return shareWords(part);
  return figures === null ? '–' : String(figures.people);
}

function choiceRest({ figures }: ShownChoice): string {
  if (figures === null || figures.rest === null) return '–';
  return figures.restInterval === null ? twoPlaces(figures.rest) : `${twoPlaces(figures.rest)} (${intervalWords(figures.restInterval)})`;
}

function revisionWords({ outline }: QuestionView, person: Person): string {
  const { revision, since, sinceAt } = outline;
  const when = shortDate(isoDay(dayNumber(sinceAt.getTime(), person.timeZone)));
  const counts = since === revision ? `Revision ${revision}` : `Revision ${revision}, which asks the same as revision ${since}`;
  return `${counts}: answers count since ${when}, when ${since === revision ? 'it' : `revision ${since}`} came into the bank.${since === 1 ? '' : ' What stood there before asked something else.'}`;
}
