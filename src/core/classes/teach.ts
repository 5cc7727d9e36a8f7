/** What to teach again: objectives by the marks that a class would lose on its paper. */

export interface MemberLoss {
  objective: string;
  lost: number;
  /** Questions on it that this member was ever asked. */
  met: number;
}

export interface TeachAgain {
  objective: string;
  /** Marks lost on a paper, a candidate: the mean over the class, and the least and the most that anybody would lose. */
  mean: number;
  least: number;
  most: number;
  /** Questions met, over all members; each has at least one answer. */
  met: number;
  /** Members who were asked any of it. */
  people: number;
}

export interface Ranked {
  /** Most marks lost first. */
  known: TeachAgain[];
  /** Too few answers to tell: most marks at stake first. */
  unsure: TeachAgain[];
}

/** Fewer say more of the few who answered than of a class (our own judgement, no source). */
export const enoughToTell = { questions: 10, people: 3 } as const;

/** @param members the losses of each member of the class */
export function rankObjectives(members: readonly (readonly MemberLoss[])[]): Ranked {
  const byObjective = new Map<string, MemberLoss[]>();
  for (const losses of members)
    for (const loss of losses) {
      const held = byObjective.get(loss.objective);
      if (held === undefined) byObjective.set(loss.objective, [loss]);
      else held.push(loss);
    }
  const all = [...byObjective].map(([objective, losses]): TeachAgain => {
    const lost = losses.map((loss) => loss.lost);
    return {
      objective,
      mean: lost.reduce((sum, each) => sum + each, 0) / losses.length,
      least: Math.min(...lost),
      most: Math.max(...lost),
      met: losses.reduce((sum, { met }) => sum + met, 0),
      people: losses.filter(({ met }) => met > 0).length,
    };
  });
  all.sort((a, b) => b.mean - a.mean || (a.objective < b.objective ? -1 : 1));
  const people = Math.min(enoughToTell.people, members.length);
  const tells = (each: TeachAgain): boolean => each.met >= enoughToTell.questions && each.people >= people;
  return { known: all.filter(tells), unsure: all.filter((each) => !tells(each)) };
}
