import { earlier, nothing, other, rightNumber, type ChoiceFigures } from '../core/analysis/gathered.js';
import type { PartFigures } from '../core/analysis/parts.js';
import type { FixedQuestion } from '../core/questions/schema.js';
import { letterOf } from '../core/tasks/task.js';
import type { BankQuestion } from '../questions/index.js';

/**
 * What a question offers and what was made of it, in words: options and parts by the letters of their order in the pack, mistakes of a
 * family by their names.
 */

export interface ShownChoice {
  /** Null for what is no option of the question. */
  letter: string | null;
  text: string;
  /** What the key says of it, in a word; nothing for a wrong option. */
  mark: string;
  /** Null for a part, and where no figures are shown. */
  figures: ChoiceFigures | null;
  part: PartFigures | null;
}

const ours: Readonly<Record<string, string>> = {
  [nothing]: 'Did not know it, and said so',
  [rightNumber]: 'The right number',
  [other]: 'Another wrong number',
  [earlier]: 'What an earlier wording offered',
};

/** @param choices nothing where no figures are shown */
export function shownChoices({ item }: BankQuestion, choices: readonly ChoiceFigures[], parts: readonly PartFigures[]): ShownChoice[] {
  if (item.kind === 'numeric') return mistakes(choices, new Map(item.family.tellTales.map(({ name, label }) => [name, label])));
  const offered = offeredBy(item.question, (part) => item.drawing?.parts.find(({ id }) => id === part)?.name ?? part);
  const byValue = new Map(choices.map((figures) => [figures.value, figures]));
  const lettered = offered.map(({ text, mark }, place): ShownChoice => ({
    letter: letterOf(place),
    text,
    mark,
    figures: byValue.get(String(place)) ?? null,
    part: parts.find((part) => part.place === place) ?? null,
  }));
  const besides = choices.filter(({ value, people }) => value in ours && people > 0);
  return [...lettered, ...besides.map((figures) => plain(ours[figures.value] ?? '', '', figures))];
}

/** The right number, then mistakes by how many made them, then what has no name. */
function mistakes(choices: readonly ChoiceFigures[], labels: ReadonlyMap<string, string>): ShownChoice[] {
  const order = ({ key, value }: ChoiceFigures): number => (key ? 0 : value === other ? 2 : value === nothing ? 3 : 1);
  return choices
    .filter(({ people }) => people > 0)
    .sort((a, b) => order(a) - order(b) || b.people - a.people)
    .map((figures) =>
      plain(ours[figures.value] ?? labels.get(figures.value) ?? 'A mistake that is no longer named', figures.key ? 'Key' : '', figures),
    );
}

const plain = (text: string, mark: string, figures: ChoiceFigures): ShownChoice => ({ letter: null, text, mark, figures, part: null });

function offeredBy(question: FixedQuestion, partName: (part: string) => string): { text: string; mark: string }[] {
  const keyed = (key: true | undefined): string => (key === true ? 'Key' : '');
  switch (question.kind) {
    case 'single':
      return question.options.map(({ text, key }) => ({ text, mark: keyed(key) }));
    case 'place':
      return question.places.map(({ part, text, key }) => ({ text: `${partName(part)}: ${text}`, mark: keyed(key) }));
    case 'several':
      return question.statements.map(({ text, holds }) => ({ text, mark: holds ? 'True' : 'False' }));
    case 'order':
      return question.steps.map(({ text, tied }, place) => ({
        text,
        mark: tied === true ? `Place ${place + 1}, or change with the one before` : `Place ${place + 1}`,
      }));
    case 'pairs':
      return question.pairs.map(({ left, right }) => ({ text: left, mark: right }));
  }
}
