import type { Random } from '../src/core/random.js';
import type { Task } from '../src/core/tasks/task.js';

/** What a form would send for a right answer, or for one of the wrong ones, to a question of any kind. */
export function fieldsFor(task: Task, right: boolean, random: Random): Record<string, string> {
  switch (task.kind) {
    case 'number':
      return { value: String(right ? task.draw.key.shown : (task.draw.tellTales[0]?.value ?? 1)) };
    case 'choice':
      return { option: chosen(task.options, right, random) };
    case 'place':
      return { option: chosen(task.places, right, random) };
    case 'several': {
      const slip = random.below(task.statements.length);
      return parts(task.statements.map(({ place, holds }, index) => [place, holds === (right || index !== slip) ? 't' : 'f']));
    }
    case 'order': {
      const places = right ? [...task.steps].sort((a, b) => a.place - b.place) : task.steps;
      return parts(task.steps.map((step, index) => [index, String(places.indexOf(step) + 1)]));
    }
    case 'pairs': {
      const shown = (place: number): number => task.rights.findIndex((other) => other.place === place);
      const slip = random.below(task.lefts.length);
      const other = (key: number, index: number): number => (right || index !== slip ? shown(key) : (shown(key) + 1) % task.rights.length);
      return parts(task.lefts.map(({ place, right: key }, index) => [place, String(other(key, index))]));
    }
  }
}

/** Of the wrong ones the first of the pack draws most people, as a misconception does. */
function chosen(list: readonly { value: string; key: boolean }[], right: boolean, random: Random): string {
  const fitting = list.filter(({ key }) => key === right).sort((a, b) => (a.value < b.value ? -1 : 1));
  return fitting[random.next() < 0.6 ? 0 : random.below(fitting.length)]?.value ?? '';
}

const parts = (fields: [number, string][]): Record<string, string> =>
  Object.fromEntries(fields.map(([number, value]) => [`part-${number}`, value]));
