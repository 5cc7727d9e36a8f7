import { shuffled, type Random } from '../random.js';
import type { PlanCandidate } from './candidate.js';

interface ObjectiveQueue {
  seen: number;
  weight: number;
  waiting: PlanCandidate[];
}

interface TopicQueue {
  /** Questions of the topic that were met. */
  seen: number;
  /** How much of a paper the topic is. */
  share: number;
  objectives: ObjectiveQueue[];
}

/**
 * The unseen questions to meet next: topics take turns by their share of the paper, an objective waits for its fellows, and what
 * matters more comes first.
 */
export function nextUnseen(pool: readonly PlanCandidate[], count: number, random: Random): PlanCandidate[] {
  if (count <= 0) return [];
  const topics = queues(pool, random);
  const chosen: PlanCandidate[] = [];
  while (chosen.length < count) {
    const topic = least(topics, ({ seen, share }) => (seen + 1) / share);
    if (topic === undefined) break;
    const objective = least(topic.objectives, ({ seen, weight }) => seen + (3 - weight) / 10);
    const next = objective?.waiting.shift();
    if (objective === undefined || next === undefined) break;
    objective.seen += 1;
    topic.seen += 1;
    chosen.push(next);
    if (objective.waiting.length === 0) topic.objectives.splice(topic.objectives.indexOf(objective), 1);
    if (topic.objectives.length === 0) topics.splice(topics.indexOf(topic), 1);
  }
  return chosen;
}

function queues(pool: readonly PlanCandidate[], random: Random): TopicQueue[] {
  const byTopic = new Map<string, TopicQueue & { byObjective: Map<string, ObjectiveQueue> }>();
  for (const c of pool) {
    let topic = byTopic.get(c.topic);
    if (topic === undefined) byTopic.set(c.topic, (topic = { seen: 0, share: 0, objectives: [], byObjective: new Map() }));
    let objective = topic.byObjective.get(c.objective);
    if (objective === undefined) topic.byObjective.set(c.objective, (objective = { seen: 0, weight: c.weight, waiting: [] }));
    topic.share += c.paperWeight;
    if (c.memory === null) objective.waiting.push(c);
    else {
      topic.seen += 1;
      objective.seen += 1;
    }
  }
  const topics = shuffled([...byTopic.values()], random);
  for (const topic of topics) {
    topic.objectives = [...topic.byObjective.values()].filter(({ waiting }) => waiting.length > 0);
    for (const objective of topic.objectives) objective.waiting = shuffled(objective.waiting, random);
  }
  return topics.filter(({ objectives }) => objectives.length > 0);
}

function least<T>(list: readonly T[], of: (each: T) => number): T | undefined {
  let best: T | undefined;
  let bestValue = Infinity;
  for (const each of list) {
    const value = of(each);
    if (value < bestValue) [best, bestValue] = [each, value];
  }
  return best;
}
