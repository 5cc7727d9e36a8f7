/**
 * A class evening, step by step: one question is before the class at a time, and only that one can be open for answers. A step says which
 * question its page showed, so that a second press, or a press in another window, changes nothing more.
 */

export const questionStates = ['waiting', 'open', 'closed', 'shown'] as const;
/** `waiting`: not opened yet. `closed`: answered, with counts and key hidden. `shown`: for good, since the key is known then. */
export type QuestionState = (typeof questionStates)[number];

export const steps = ['open', 'close', 'show', 'next', 'back', 'end'] as const;
export type Step = (typeof steps)[number];

export interface EveningState {
  /** The question before the class, from 1 on; 0 before the first. */
  place: number;
  ended: boolean;
  /** Of the questions 1, 2, ... in turn. */
  states: readonly QuestionState[];
}

/** `moved`: another question is before the class than the page showed. */
export const refusals = ['ended', 'moved', 'not-begun', 'still-open', 'shown-already', 'no-more', 'none-before'] as const;
export type Refusal = (typeof refusals)[number];

export type Stepped =
  /** `closed`: the question that was closed by it, whose answers are now to be recorded. */
  { did: 'stepped'; state: EveningState; closed: number | null } | { did: 'nothing' } | { did: 'refused'; why: Refusal };

const nothing: Stepped = { did: 'nothing' };
const refused = (why: Refusal): Stepped => ({ did: 'refused', why });
const stepped = (state: EveningState, closed: number | null = null): Stepped => ({ did: 'stepped', state, closed });

/** The state of the question before the class; null before the first. */
export const currentState = ({ place, states }: EveningState): QuestionState | null => states[place - 1] ?? null;

const withCurrent = (state: EveningState, current: QuestionState): EveningState => ({
  ...state,
  states: state.states.map((each, index) => (index === state.place - 1 ? current : each)),
});

/** @param seen the question that the page showed on which the step was pressed */
export function takeStep(state: EveningState, step: Step, seen: number): Stepped {
  if (step === 'end') return end(state);
  if (state.ended) return refused('ended');
  if (step === 'next' || step === 'back') return turn(state, seen, step === 'next' ? 1 : -1);
  if (seen !== state.place) return refused('moved');
  const current = currentState(state);
  if (current === null) return refused('not-begun');
  switch (step) {
    case 'open':
      if (current === 'shown') return refused('shown-already');
      return current === 'open' ? nothing : stepped(withCurrent(state, 'open'));
    case 'close':
      return current === 'open' ? stepped(withCurrent(state, 'closed'), state.place) : nothing;
    case 'show':
      if (current === 'open') return refused('still-open');
      return current === 'shown' ? nothing : stepped(withCurrent(state, 'shown'));
  }
}

function turn(state: EveningState, seen: number, by: 1 | -1): Stepped {
  if (state.place === seen + by) return nothing;
  if (state.place !== seen) return refused('moved');
  if (currentState(state) === 'open') return refused('still-open');
  const place = state.place + by;
  if (place > state.states.length) return refused('no-more');
  return place < 1 ? refused('none-before') : stepped({ ...state, place });
}

/** What is still open is closed with it, so no answer is lost. */
function end(state: EveningState): Stepped {
  if (state.ended) return nothing;
  const open = currentState(state) === 'open';
  return stepped({ ...(open ? withCurrent(state, 'closed') : state), ended: true }, open ? state.place : null);
}

/** The steps that make sense now, the likeliest first; ending is always there beside them. */
export function stepsNow(state: EveningState): Exclude<Step, 'end'>[] {
  if (state.ended) return [];
  const around = [...(state.place < state.states.length ? (['next'] as const) : []), ...(state.place > 1 ? (['back'] as const) : [])];
  switch (currentState(state)) {
    case null:
      return around;
    case 'waiting':
      return ['open', 'show', ...around];
    case 'open':
      return ['close'];
    case 'closed':
      return ['show', 'open', ...around];
    case 'shown':
      return around;
  }
}
