import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  currentState,
  questionStates,
  steps,
  stepsNow,
  takeStep,
  type EveningState,
  type Step,
  type Stepped,
} from '../../../src/core/evenings/steps.js';

/** The rules that no press in any window may break, and the way through an ordinary evening. */

const fresh = (questions: number): EveningState => ({ place: 0, ended: false, states: Array.from({ length: questions }, () => 'waiting') });
const after = (state: EveningState, result: Stepped): EveningState => (result.did === 'stepped' ? result.state : state);

/** Presses in any windows: each knows the question that its own page showed. */
const presses = fc.array(fc.record({ step: fc.constantFrom(...steps), seen: fc.nat(8) }), { maxLength: 60 });
const evening = fc.integer({ min: 1, max: 7 }).map(fresh);
/** Presses from pages that are not old, so that evenings come far; mixed with old ones. */
const lively = fc.array(
  fc.record({
    step: fc.constantFrom(...steps.filter((step) => step !== 'end')),
    stale: fc.oneof(fc.constant(null), fc.constant(null), fc.nat(8)),
  }),
  { minLength: 20, maxLength: 80, size: 'max' },
);

function run(
  state: EveningState,
  moves: readonly { step: Step; seen: number }[],
  each: (from: EveningState, result: Stepped) => void,
): EveningState {
  return moves.reduce((at, { step, seen }) => {
    const result = takeStep(at, step, seen);
    each(at, result);
    return after(at, result);
  }, state);
}

function holds({ place, ended, states }: EveningState): void {
  expect(place).toBeGreaterThanOrEqual(0);
  expect(place).toBeLessThanOrEqual(states.length);
  const open = states.flatMap((state, index) => (state === 'open' ? [index + 1] : []));
  // At most the question before the class is open, and none when it is over.
  expect(open.filter((position) => ended || position !== place)).toEqual([]);
}

describe('an evening, whatever is pressed', () => {
  it('has at most one question open, which is the one before the class, and none when it is over', () => {
    let looked = 0;
    fc.assert(
      fc.property(evening, presses, (state, moves) => {
        run(state, moves, (from, result) => {
          holds(after(from, result));
          looked += 1;
        });
      }),
    );
    // The property has had something to look at.
    expect(looked).toBeGreaterThan(100);
  });

  it('closes a question, to be recorded, exactly when it stops being open', () => {
    let closings = 0;
    fc.assert(
      fc.property(evening, lively, fc.boolean(), (state, moves, ends) => {
        let at = state;
        for (const { step, stale } of [...moves, ...(ends ? [{ step: 'end' as const, stale: null }] : [])]) {
          const result = takeStep(at, step, stale ?? at.place);
          const next = after(at, result);
          const stopped = at.states.flatMap((was, index) => (was === 'open' && next.states[index] !== 'open' ? [index + 1] : []));
          const told = result.did === 'stepped' && result.closed !== null ? [result.closed] : [];
          expect(told).toEqual(stopped);
          closings += told.length;
          at = next;
        }
      }),
    );
    // The property has had something to look at.
    expect(closings).toBeGreaterThan(100);
  });

  it('never opens or hides again what was shown', () => {
    fc.assert(
      fc.property(evening, lively, (state, moves) => {
        let at = state;
        for (const { step, stale } of moves) {
          const next = after(at, takeStep(at, step, stale ?? at.place));
          at.states.forEach((was, index) => was === 'shown' && expect(next.states[index]).toBe('shown'));
          at = next;
        }
      }),
    );
  });

  it('changes nothing more when a step is pressed a second time, from the same page', () => {
    fc.assert(
      fc.property(evening, lively, fc.constantFrom(...steps), fc.nat(8), (state, moves, step, seen) => {
        const at = moves.reduce((from, move) => after(from, takeStep(from, move.step, move.stale ?? from.place)), state);
        const once = after(at, takeStep(at, step, seen));
        expect(after(once, takeStep(once, step, seen))).toEqual(once);
      }),
    );
  });

  it('changes the question before the class by one at most, and one state at most', () => {
    fc.assert(
      fc.property(evening, presses, (state, moves) => {
        run(state, moves, (from, result) => {
          const next = after(from, result);
          expect(Math.abs(next.place - from.place)).toBeLessThanOrEqual(1);
          expect(next.states.filter((each, index) => each !== from.states[index]).length).toBeLessThanOrEqual(1);
        });
      }),
    );
  });

  it('offers only steps that can be taken, and always a way on until the last question is shown', () => {
    fc.assert(
      fc.property(evening, lively, (state, moves) => {
        const at = moves.reduce((from, move) => after(from, takeStep(from, move.step, move.stale ?? from.place)), state);
        const offered = stepsNow(at);
        for (const step of offered) expect(takeStep(at, step, at.place).did).toBe('stepped');
        const last = at.place === at.states.length && currentState(at) === 'shown';
        if (!last) expect(offered.some((step) => step !== 'back')).toBe(true);
      }),
    );
  });

  it('is over for good: nothing but a second ending does not say so', () => {
    fc.assert(
      fc.property(evening, lively, fc.constantFrom(...steps), fc.nat(8), (state, moves, step, seen) => {
        const at = moves.reduce((from, move) => after(from, takeStep(from, move.step, move.stale ?? from.place)), state);
        const over = after(at, takeStep(at, 'end', 0));
        expect(over.ended).toBe(true);
        expect(takeStep(over, step, seen)).toEqual(step === 'end' ? { did: 'nothing' } : { did: 'refused', why: 'ended' });
      }),
    );
  });
});

describe('an ordinary evening of two questions', () => {
  it('goes from open to closed to shown to the next, and a question of hands alone from waiting to shown', () => {
    const moves: [Step, number][] = [
      ['next', 0],
      ['open', 1],
      ['close', 1],
      ['open', 1],
      ['close', 1],
      ['show', 1],
      ['next', 1],
      ['show', 2],
      ['end', 2],
    ];
    const states: string[] = [];
    run(
      fresh(2),
      moves.map(([step, seen]) => ({ step, seen })),
      (from, result) => {
        expect(result.did).toBe('stepped');
        const next = after(from, result);
        states.push(`${next.place} ${next.states.join(' ')}${next.ended ? ' over' : ''}`);
      },
    );
    expect(states).toEqual([
      '1 waiting waiting',
      '1 open waiting',
      '1 closed waiting',
      '1 open waiting',
      '1 closed waiting',
      '1 shown waiting',
      '2 shown waiting',
      '2 shown shown',
      '2 shown shown over',
    ]);
  });

  it('says why a step is refused', () => {
    const at = (place: number, ...states: EveningState['states']): EveningState => ({ place, ended: false, states });
    const why = (state: EveningState, step: Step, seen = state.place): string => {
      const result = takeStep(state, step, seen);
      return result.did === 'refused' ? result.why : result.did;
    };
    expect(why(at(0, 'waiting'), 'open')).toBe('not-begun');
    expect(why(at(1, 'open', 'waiting'), 'next')).toBe('still-open');
    expect(why(at(1, 'open'), 'show')).toBe('still-open');
    expect(why(at(1, 'shown'), 'open')).toBe('shown-already');
    expect(why(at(1, 'shown'), 'next')).toBe('no-more');
    expect(why(at(1, 'shown'), 'back')).toBe('none-before');
    expect(why(at(2, 'shown', 'waiting'), 'open', 1)).toBe('moved');
    // Pressed in two windows: the second finds it done.
    expect(why(at(2, 'shown', 'waiting'), 'next', 1)).toBe('nothing');
    // An evening that is ended while its question is open closes it.
    expect(takeStep(at(1, 'open'), 'end', 0)).toEqual({ did: 'stepped', state: { place: 1, ended: true, states: ['closed'] }, closed: 1 });
    expect(questionStates).toHaveLength(4);
  });
});
