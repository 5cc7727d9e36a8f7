import { describe, expect, it } from 'vitest';
import { learnerKinds } from '../../../src/core/simulation/learners.js';
import { policyNames, settings, simulate } from '../../../src/core/simulation/run.js';

/**
 * A small run of `npm run simulate`. The order of the policies is that of the scheduling study, whose simulated learners these follow;
 * the margins are set below what the study found, since sixteen learners are few.
 */
const learners = 16;

describe('the plan, with half the time', () => {
  it.each(learnerKinds)(
    'leaves more recalled on the exam day than both plain policies: learners of the kind %s',
    (kind) => {
      const mean = Object.fromEntries(
        policyNames.map((policy) => {
          const outcomes = Array.from({ length: learners }, (_, index) => simulate(kind, policy, settings['half-the-time'], index + 1));
          return [policy, outcomes.reduce((sum, { recalled }) => sum + recalled, 0) / learners];
        }),
      ) as Record<(typeof policyNames)[number], number>;
      const margin = kind === 'perturbed' ? 1 : 20;
      expect(mean.plan).toBeGreaterThan(mean['retention-0.9'] + margin);
      expect(mean.plan).toBeGreaterThan(mean.ladder + margin);
    },
    120_000,
  );

  it('gives the same figures for the same seed', () => {
    const once = () => simulate('traces', 'plan', settings['late-start'], 3);
    expect(once()).toEqual(once());
  });
});
