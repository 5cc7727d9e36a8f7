import type { Person } from '../accounts/index.js';
import { classTabs } from '../classes/index.js';
import { dayNumber, dayWords } from '../core/calendar.js';
import { counted, shortened } from '../core/words.js';
import { field } from '../study/index.js';
import { shownChoices } from './question-choices.js';
import type { ClassQuestionsPage, SuspectPart, QueryLink, QuestionLine, ScopeLink, SignPart } from './question-page-types.js';
import type { AnalysedQuestion, ClassQuestions } from './question-service.js';
import type { Scope } from './question-tally-store.js';
import { falseSigns } from './question-verdict.js';
import { firstSightWords, scopes, scopeWords, sureWords } from './question-words.js';

/** Which question is bad: those to look at first, each with what it says, its key, its figures and what to do. */

export function classQuestionsPage(view: ClassQuestions, person: Person): ClassQuestionsPage {
  const { head, scope, look, now } = view;
  const full = look.filter(({ bank }) => bank !== null);
  const first = [...look, ...view.sound, ...view.tooFew].reduce((sum, { figures }) => sum + figures.n, 0);
  return {
    view: 'analysis/class-questions',
    data: {
      className: head.name,
      members: counted(head.members, 'candidate'),
      tabs: classTabs(head.classId, '/questions'),
      scopes: scopeLinks(`/classes/${head.classId}/questions`, scope),
      lead: leadWords(view),
      note: noteWords(view),
      suspects: full.map((question) => suspectPart(question, view)),
      folds: foldsOf(view),
      hidden: hiddenWords(view.hidden),
      titleBlock: [
        field('Class', head.name, 6, { name: true }),
        field('Answers of', scopeWords[scope], 6),
        field('First answers counted', String(first), 6),
        field('As of', dayWords(dayNumber(now.getTime(), person.timeZone)), 6),
      ],
    },
  };
}

export const scopeLinks = (path: string, current: Scope): ScopeLink[] =>
  scopes.map((scope) => ({ href: `${path}?of=${scope}`, text: scopeWords[scope], current: scope === current }));

export const signParts = ({ verdict }: Pick<AnalysedQuestion, 'verdict'>): SignPart[] =>
  verdict.signs.map(({ severity, text, todo }) => ({ grave: severity === 'look', text, todo }));

export const queryLinks = ({ queries }: Pick<AnalysedQuestion, 'queries'>): QueryLink[] =>
  queries.map(({ id, body, open }) => ({ href: `/queries/${id}`, text: shortened(body), note: open ? 'waits for an answer' : 'answered' }));

const addressOf = ({ outline }: AnalysedQuestion, { head, scope }: ClassQuestions): string =>
  `/classes/${head.classId}/questions/${outline.questionId}?of=${scope}`;

function suspectPart(question: ClassQuestions['look'][number], view: ClassQuestions): SuspectPart {
  const { outline, figures, bank } = question;
  return {
    href: addressOf(question, view),
    code: outline.code,
    title: outline.objectiveTitle,
    stem: bank?.item.kind === 'numeric' ? `${bank.item.family.title}. ${bank.item.family.asks}` : outline.stem,
    figures: [`${firstSightWords(figures)}.`, sureWords(figures) ?? ''].join(' ').trim(),
    signs: signParts(question).filter(({ grave }) => grave),
    choices:
      bank === null
        ? []
        : shownChoices(bank, figures.choices, []).map(({ letter, text, mark, figures: chosen }) => ({
            letter,
            text,
            mark,
            chosen: chosen === null ? '' : String(chosen.people),
          })),
    queries: queryLinks(question),
  };
}

const nobody: Readonly<Record<Scope, string>> = {
  class: 'Nobody in this class has answered a question yet.',
  club: 'Nobody in any class has answered a question yet.',
  all: 'Nobody here has answered a question yet.',
};

function leadWords({ look, sound, tooFew, scope, hidden }: ClassQuestions): string {
  if (look.length + sound.length + tooFew.length === 0) {
    if (hidden > 0) return 'Nothing can be shown of so few people. This class by itself can be looked at.';
    return `${nobody[scope]} As answers come in, questions to look at stand here.`;
  }
  if (look.length === 0)
    return sound.length === 0
      ? 'No question shows a sign, and there are too few answers to tell of any. With more answers, signs stand here.'
      : 'No question shows a sign.';
  return look.length === 1 ? 'One question to look at.' : `${look.length} questions to look at, the worst first.`;
}

/** What is counted, and what chance alone does. */
function noteWords({ intervals, tooFew, sound, look }: ClassQuestions): string {
  const counts =
    'Counted is each person’s first answer to a question as it now stands. A sign goes by the end of the 95 % limits, so a few answers raise none.';
  if (intervals === 0) return counts;
  const judged = [...look, ...sound, ...tooFew].filter(({ figures }) => figures.n >= 10).length;
  const expected = falseSigns(intervals);
  const often = expected < 0.95 ? 'fewer than one sign' : `about ${counted(Math.round(expected), 'sign')}`;
  return `${counts} Chance plays its part: in ${counted(judged, 'question')} with ten answers or more, ${often} would stand here even if no answer had to do with what people know. Sound questions show fewer.`;
}

function hiddenWords(hidden: number): string | null {
  if (hidden === 0) return null;
  const which = hidden === 1 ? 'One question is' : `${hidden} questions are`;
  return `${which} left out here: fewer than five people beyond your classes have answered, and what they answered could be worked out.`;
}

function foldsOf(view: ClassQuestions): ClassQuestionsPage['data']['folds'] {
  const line = (question: AnalysedQuestion, note: string): QuestionLine => ({
    href: addressOf(question, view),
    code: question.outline.code,
    title: question.outline.objectiveTitle,
    note,
  });
  const counts = (question: AnalysedQuestion): QuestionLine => line(question, `${question.figures.right} of ${question.figures.n} right`);
  const more = view.look.filter(({ bank }) => bank === null);
  const folds = [
    {
      summary: `${more.length} more to look at`,
      lines: more.map((question) => line(question, question.verdict.signs[0]?.text ?? 'A query waits.')),
    },
    { summary: `${counted(view.sound.length, 'question')} with enough answers and no sign`, lines: view.sound.map(counts) },
    { summary: `${counted(view.tooFew.length, 'question')} with too few answers to tell`, lines: view.tooFew.map(counts) },
  ];
  return folds.filter(({ lines }) => lines.length > 0);
}
