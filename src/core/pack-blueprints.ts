import { textAt, type PackDraft, type PackFault, type Path } from './pack-draft.js';
import type { Blueprint } from './syllabus.js';

/** A blueprint must add up, be passable, and ask of each topic no more than the pack has. */
export function checkBlueprints(draft: PackDraft, complete: boolean): PackFault[] {
  return draft.blueprints.flatMap(({ whole }, index) => {
    if (whole === null) return [];
    const path = ['blueprints', index];
    return [...adds(whole, path), ...(complete ? covered(whole, draft, path) : [])];
  });
}

const error = (rule: string, path: Path, message: string): PackFault => ({ level: 'error', rule, path, message });

function adds({ id, questions, passMark, shares }: Blueprint, path: Path): PackFault[] {
  const sum = Object.values(shares).reduce((total, share) => total + share, 0);
  return [
    ...(sum === questions
      ? []
      : [error('blueprint-sum', [...path, 'shares'], `The shares of "${id}" add up to ${sum}, and the paper has ${questions} questions.`)]),
    ...(passMark <= questions
      ? []
      : [error('blueprint-sum', [...path, 'passMark'], `The pass mark of "${id}" is above the number of questions.`)]),
  ];
}

function covered({ shares }: Blueprint, draft: PackDraft, path: Path): PackFault[] {
  const topics = new Set(draft.topics.map(({ raw }) => textAt(raw, 'code')));
  const asked = [
    ...draft.questions.map(({ raw }) => textAt(raw, 'objective')),
    ...draft.families.map(({ whole }) => whole?.objectives[0] ?? ''),
  ].map((objective) => objective.slice(0, 2));
  return Object.entries(shares).flatMap(([topic, share]): PackFault[] => {
    const at = [...path, 'shares', topic];
    if (!topics.has(topic)) return [error('missing-reference', at, `This pack has no topic "${topic}".`)];
    const have = asked.filter((code) => code === topic).length;
    return have >= share ? [] : [error('blueprint-short', at, `The paper asks ${share} questions of ${topic}, and the pack has ${have}.`)];
  });
}
