import type { Person } from '../accounts/index.js';
import type { QuestionState } from '../core/evenings/steps.js';
import { tellTaleParts } from '../core/outcome-parts.js';
import { valueOfLetter } from '../core/papers/sheet.js';
import { givenWords, keyWords } from '../core/tasks/answered-part.js';
import { markGiven } from '../core/tasks/index.js';
import { field, questionTitleBlock } from '../study/index.js';
import type { JoinedView } from './joining-service.js';
import type { AnswerPage } from './page-types.js';
import { cautionOf, keyPart, questionPart } from './parts.js';
import type { EveningHead } from './rows.js';

/** An evening on a candidate's own phone. */

type Data = AnswerPage['data'];
type Asked = NonNullable<JoinedView['asked']>;

const rootOf = ({ head }: JoinedView): string => `/evening/${head.eveningId}`;

export const ownWords = (letter: string): string => `Your answer: ${letter}. You can change it until the tutor closes the question.`;

/** What is said of a choice that could not be taken. @param own what stands */
export function lateWords(did: 'not-open' | 'recorded', letter: string, own: string | null): string {
  const stands = own === null ? 'You have no answer to it.' : `Your answer stays ${own}.`;
  return did === 'recorded'
    ? `Your answer to this question is recorded already, so ${letter} was not taken. ${stands}`
    : `The question was closed before ${letter} came, so it was not taken. ${stands}`;
}

const livePart = (view: JoinedView, say = ''): Data['live'] => ({
  page: rootOf(view),
  events: view.member && view.head.endedAt === null ? `${rootOf(view)}/events` : '',
  seen: String(view.head.change),
  say,
});

function base(view: JoinedView, person: Person): Data {
  const { head } = view;
  return {
    title: head.title,
    place: head.place === 0 || head.endedAt !== null ? head.className : `Question ${head.place} of ${head.questions}`,
    live: livePart(view),
    csrf: '',
    action: `${rootOf(view)}/answer`,
    seen: head.place,
    headline: null,
    lead: null,
    stem: null,
    drawing: null,
    options: [],
    open: false,
    own: null,
    late: null,
    shown: null,
    summary: [],
    caution: null,
    again: rootOf(view),
    back: null,
    titleBlock: [
      field('Evening', head.title, 4, { name: true }),
      field('Class', head.className, 4),
      field('Candidate', person.displayName, 4),
    ],
  };
}

const page = (data: Data): AnswerPage => ({ view: 'evenings/answer', data });

/** @param late said of a choice that came too late */
export function answerPage(view: JoinedView, person: Person, csrf: string, late: string | null): AnswerPage {
  const { head, member, asked } = view;
  const data = { ...base(view, person), csrf, late };
  if (head.endedAt !== null) return page({ ...data, ...endedPart(view) });
  if (!member) return page({ ...data, ...leftPart });
  if (asked === null) return page({ ...data, ...waitPart(head) });
  return page({ ...data, ...askedPart(view, asked) });
}

/** A question of an evening that is looked at again. */
export function reviewPage(view: JoinedView, person: Person, position: number): AnswerPage | null {
  if (view.asked === null) return null;
  const back = { href: rootOf(view), text: 'Back to the evening' };
  const place = `Question ${position} of ${view.head.questions}`;
  return page({
    ...base(view, person),
    ...shownPart(view, view.asked),
    place,
    again: null,
    back,
    live: { page: `${rootOf(view)}/${position}`, events: '', seen: '', say: '' },
  });
}

const leftPart: Partial<Data> = {
  headline: 'You are not in this class any more',
  lead: 'What you answered up to now is kept with your own answers. Ask the tutor if this is a mistake.',
  again: null,
  back: { href: '/', text: 'Go to Now' },
};

const waitPart = ({ title }: EveningHead): Partial<Data> => ({
  headline: `${title} has not begun yet`,
  lead: 'Keep this page open. The first question appears here when your tutor puts it up.',
});

/** What is said to whoever cannot see it, as the question changes. */
const sayings: Readonly<Record<QuestionState, (place: number) => string>> = {
  waiting: (place) => `Question ${place} is on the screen.`,
  open: (place) => `The tutor opened question ${place}.`,
  closed: (place) => `The tutor closed question ${place}.`,
  shown: (place) => `The tutor showed the answer to question ${place}.`,
};

function askedPart(view: JoinedView, asked: Asked): Partial<Data> {
  const { head, own } = view;
  const live = livePart(view, sayings[asked.state](head.place));
  if (asked.state === 'shown') return { ...shownPart(view, asked), live };
  const part = questionPart(asked);
  const open = asked.state === 'open' && (own === null || own.right === null);
  return {
    live,
    stem: part.stem,
    drawing: part.drawing,
    options: part.options.map((option) => ({ ...option, chosen: own?.choice === option.letter })),
    open,
    own: ownLine(asked.state, own),
    caution: cautionOf(asked, false),
    titleBlock: questionTitleBlock(asked.bank, asked.seed),
  };
}

function ownLine(state: QuestionState, own: JoinedView['own']): string {
  const recorded = own !== null && own.right !== null ? `Your answer: ${own.choice}. It is recorded and stays.` : null;
  if (state === 'waiting') return 'Your tutor has not opened this question yet. Think first.';
  if (state === 'open') return recorded ?? (own === null ? 'Choose an answer. It is saved at once.' : ownWords(own.choice));
  const wait = 'Wait until your tutor shows the answer.';
  return own === null
    ? `The question is closed. You gave no answer on a phone. ${wait}`
    : `The question is closed. Your answer: ${own.choice}. ${wait}`;
}

function shownPart({ head, own }: JoinedView, asked: Asked): Partial<Data> {
  const { task } = asked;
  const given = own === null ? null : valueOfLetter(task, own.choice);
  const mark = given === null ? null : markGiven(task, given);
  const key = keyPart(asked, head.region, given);
  const right = mark?.right === true;
  const drawn = task.kind === 'choice' && task.draw !== null;
  return {
    stem: asked.stem,
    shown: {
      verdict:
        own === null || given === null
          ? null
          : {
              sign: right ? 'yes' : 'no',
              word: right ? 'Right.' : 'Not right.',
              fact: keyWords(task, right),
              said: `${own.choice}: you ${givenWords(task, given)}.${own.right !== null && own.token === null ? ' This question is not among yours, or has a newer text by now, so it is not counted in your progress.' : ''}`,
            },
      fact: key.fact,
      tellTales: drawn ? tellTaleParts(mark, false) : [],
      key,
      query: `/queries/new?question=${asked.questionId}&revision=${asked.revision}&seed=${asked.seed}&region=${head.region}`,
    },
    caution: cautionOf(asked, true),
    titleBlock: questionTitleBlock(asked.bank, asked.seed),
  };
}

function endedPart(view: JoinedView): Partial<Data> {
  const answers = view.all.filter(({ own }) => own !== null);
  const right = answers.filter(({ own }) => own?.right === true).length;
  return {
    headline: 'This evening is over',
    lead:
      answers.length === 0
        ? 'You gave no answers on a phone. You can still look at the questions.'
        : `You answered ${answers.length} of ${view.all.length} on your phone, ${right} of them right. Your answers are kept with all others of yours.`,
    summary: view.all.map(({ position, bank, own }) => ({
      href: `${rootOf(view)}/${position}`,
      position,
      code: bank.objective.code,
      objective: bank.objective.title,
      own: own === null ? 'no answer' : `${own.choice}, ${own.right === true ? 'right' : 'not right'}`,
    })),
    again: null,
    back: { href: '/', text: 'Go to Now' },
  };
}
