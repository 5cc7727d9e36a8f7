import type { PlanCandidate, PlannedQuestion } from './candidate.js';

/** The questions of a sitting, chosen and not yet in the order in which they are asked. */
export interface Taken {
  again: { candidate: PlanCandidate; reason: PlannedQuestion['reason'] }[];
  fresh: { candidate: PlanCandidate; reason: PlannedQuestion['reason'] }[];
}

type Place = Taken['again'][number];

/** New ones spread evenly between the others; neighbours are of different topics where possible, and else of different objectives. */
export function arrange(taken: Taken): PlannedQuestion[] {
  const [again, fresh] = [[...taken.again], [...taken.fresh]];
  const total = again.length + fresh.length;
  const plan: Place[] = [];
  for (let i = 0, placed = 0; i < total; i += 1) {
    const wantsNew = again.length === 0 || (fresh.length > 0 && placed < Math.floor(((i + 1) * taken.fresh.length) / total));
    const next = pull(wantsNew ? [fresh, again] : [again, fresh], plan.at(-1)?.candidate);
    if (next.reason === 'new') placed += 1;
    plan.push(next);
  }
  return plan.map(({ candidate, reason }) => ({ questionId: candidate.questionId, reason }));
}

/** The first of another topic in the preferred list, else in the other; else the first of another objective; else the first there is. */
function pull(lists: Place[][], before: PlanCandidate | undefined): Place {
  const tests = [
    ({ candidate }: Place) => candidate.topic !== before?.topic,
    ({ candidate }: Place) => candidate.objective !== before?.objective,
    () => true,
  ];
  for (const test of tests) {
    for (const list of lists) {
      const index = list.findIndex(test);
      if (index >= 0) return list.splice(index, 1)[0] as Place;
    }
  }
  throw new Error('nothing left to arrange');
}
