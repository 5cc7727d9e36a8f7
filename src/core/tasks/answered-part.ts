import type { Drawing, DrawingMark } from '../drawing.js';
import { drawingView, type DrawingView } from './asked-part.js';
import { orderGiven } from './order.js';
import { pairsGiven } from './pairs.js';
import { letterOf, listWords, type OrderTask, type PairsTask, type PlaceTask, type SeveralTask, type Task } from './task.js';

/** What a page shows of a question after it was answered: the key, what was given, and why. A typed number has none of the lists. */
export interface AnsweredPart {
  /** Every option or place with why it is or is not right. */
  options: { letter: string; text: string; key: boolean; yours: boolean; why: string }[] | null;
  /** `judged`: the sign for what the candidate said of it; null where nobody said anything. */
  statements: { letter: string; text: string; holds: boolean; judged: 'yes' | 'no' | null; said: string; why: string }[] | null;
  /** In the right order; `yours` is the place it was given. */
  steps: { letter: string; text: string; yours: number; moved: boolean; tied: boolean; why: string }[] | null;
  pairs: { letter: string; text: string; key: string; yours: string; right: boolean; why: string }[] | null;
  /** What goes with nothing. */
  spare: { text: string; why: string }[];
  drawing: DrawingView | null;
}

const nothing: AnsweredPart = { options: null, statements: null, steps: null, pairs: null, spare: [], drawing: null };

/** @param given the answer as it is kept; null shows the question with its key and no answer */
export function answeredPart(task: Task, drawing: Drawing | null, given: string | null): AnsweredPart {
  const base = { ...nothing, drawing: drawing === null ? null : drawingView(drawing, true, [], prefixOf(given)) };
  switch (task.kind) {
    case 'number':
      return base;
    case 'choice': {
      const options = task.options.map(({ value, text, key, why }, index) => {
        return { letter: letterOf(index), text, key, yours: value === given, why };
      });
      return { ...base, options };
    }
    case 'several':
      return { ...base, statements: statements(task, given) };
    case 'order':
      return { ...base, steps: steps(task, given) };
    case 'pairs':
      return { ...base, ...pairs(task, given) };
    case 'place':
      return { ...base, ...places(task, given) };
  }
}

/** The key alone is shown beside the question, whose drawing has the first prefix. */
const prefixOf = (given: string | null): string => (given === null ? 'key' : 'drawing');

function statements(task: SeveralTask, given: string | null): AnsweredPart['statements'] {
  return task.statements.map(({ place, text, holds, why }, index) => {
    const right = given?.[place] === (holds ? 't' : 'f');
    const truth = holds ? 'True' : 'False';
    const said = given === null ? truth : right ? `${truth}, as you said` : `${truth}, and you said ${holds ? 'false' : 'true'}`;
    return { letter: letterOf(index), text, holds, judged: given === null ? null : right ? 'yes' : 'no', said, why };
  });
}

function steps(task: OrderTask, given: string | null): AnsweredPart['steps'] {
  const put = given === null ? [] : orderGiven(task, given);
  const right = [...task.steps].sort((a, b) => a.place - b.place);
  return right.map((step, index) => {
    const yours = put.indexOf(step);
    const may = right.flatMap(({ rank }, place) => (rank === step.rank ? [place] : []));
    return {
      letter: letterOf(task.steps.indexOf(step)),
      text: step.text,
      yours: yours + 1,
      moved: given !== null && !may.includes(yours),
      tied: index > 0 && right[index - 1]?.rank === step.rank,
      why: step.why,
    };
  });
}

function pairs(task: PairsTask, given: string | null): Pick<AnsweredPart, 'pairs' | 'spare'> {
  const chosen = given === null ? null : pairsGiven(given);
  const textOf = (place: number | undefined): string => task.rights.find((right) => right.place === place)?.text ?? '';
  const list = task.lefts.map(({ place, text, right, why }, index) => {
    const yours = chosen === null ? right : chosen[place];
    return { letter: letterOf(index), text, key: textOf(right), yours: textOf(yours), right: yours === right, why };
  });
  return { pairs: list, spare: task.rights.filter(({ why }) => why !== '').map(({ text, why }) => ({ text, why })) };
}

function places(task: PlaceTask, given: string | null): Pick<AnsweredPart, 'options' | 'drawing'> {
  const options = task.places.map(({ value, part, text, key, why }, index) => {
    return { letter: letterOf(index), text: `${part.name}: ${text}`, key, yours: value === given, why };
  });
  const marks = task.places.map(({ value, part, key }, index): DrawingMark => {
    return { letter: letterOf(index), at: part.at, look: key ? 'yes' : value === given ? 'no' : 'plain', chooses: null };
  });
  return { options, drawing: drawingView(task.drawing, true, marks, prefixOf(given)) };
}

/**
 * The key in a few words, for the top of the page.
 * @param right whether the answer was: beside "Not right." the key must not read as what was not right
 */
export function keyWords(task: Task, right = true): string {
  switch (task.kind) {
    case 'number':
      return `The answer is ${task.draw.answerText}.`;
    case 'choice':
      return `${right ? '' : 'The right answer: '}${sentence(task.options.find(({ key }) => key)?.text ?? '')}`;
    case 'several': {
      const true_ = task.statements.flatMap(({ holds }, index) => (holds ? [letterOf(index)] : []));
      return true_.length === 1 ? `${listWords(true_)} alone is true.` : `${listWords(true_)} are true.`;
    }
    case 'order':
      return `The right order is ${rightOrder(task)}.`;
    case 'pairs':
      return 'The pairs stand below.';
    case 'place': {
      const index = task.places.findIndex(({ key }) => key);
      return `It is ${letterOf(index)}: ${sentence(task.places[index]?.part.name ?? '')}`;
    }
  }
}

/** What the candidate gave, to follow "You". */
export function givenWords(task: Task, given: string): string {
  switch (task.kind) {
    case 'number':
      return given === '' ? 'said that you do not know it' : `wrote “${given}”`;
    case 'choice':
      return `chose “${task.options.find(({ value }) => value === given)?.text ?? given}”`;
    case 'several': {
      const said = task.statements.flatMap(({ place }, index) => (given[place] === 't' ? [letterOf(index)] : []));
      return said.length === 0 ? 'called no statement true' : `called ${listWords(said)} true`;
    }
    case 'order':
      return `put them in the order ${orderLetters(task, orderGiven(task, given))}`;
    case 'pairs':
      return 'matched them';
    case 'place':
      return `chose ${letterOf(task.places.findIndex(({ value }) => value === given))}`;
  }
}

/** How much of an answer in parts is right; null where it is right or wrong as a whole. */
export function scoreWords(task: Task, score: number | null): string | null {
  if (score === null || score === 1) return null;
  if (task.kind === 'several')
    return `${Math.round(score * task.statements.length)} of ${task.statements.length} statements are judged right.`;
  if (task.kind === 'pairs') return `${Math.round(score * task.lefts.length)} of ${task.lefts.length} are matched right.`;
  if (task.kind !== 'order') return null;
  const pairsOfSteps = task.steps.flatMap((a) => task.steps.filter((b) => b.rank > a.rank)).length;
  return `Of ${pairsOfSteps} pairs of steps, ${Math.round(score * pairsOfSteps)} stand the right way round.`;
}

/** Steps of one rank may change places: "A, B and C in either order, D". */
function rightOrder(task: OrderTask): string {
  const ranks = [...new Set(task.steps.map(({ rank }) => rank))].sort((a, b) => a - b);
  return ranks
    .map((rank) => {
      const letters = task.steps.flatMap((step, index) => (step.rank === rank ? [letterOf(index)] : []));
      return letters.length === 1 ? letters.join('') : `${listWords(letters)} in either order`;
    })
    .join(', ');
}

const orderLetters = (task: OrderTask, steps: OrderTask['steps']): string =>
  steps.map((step) => letterOf(task.steps.indexOf(step))).join(', ');

const sentence = (text: string): string => (/[.!?]$/.test(text) ? text : `${text}.`);
