import type { Path, PackFault } from './pack-draft.js';
import type { SingleQuestion } from './questions/schema.js';

/**
 * Signs by which a candidate who knows nothing finds the key, or none can: the item-writing rules that a program can see
 * (as in T. M. Haladyna, S. M. Downing, M. C. Rodriguez, "A review of multiple-choice item-writing guidelines", 2002).
 */
export function checkOptions(question: SingleQuestion, path: Path): PackFault[] {
  return [...sameText(question, path), ...keyTooLong(question, path), ...catchAll(question, path)];
}

function sameText({ options }: SingleQuestion, path: Path): PackFault[] {
  const seen = new Map<string, number>();
  return options.flatMap((option, index): PackFault[] => {
    const text = plain(option.text);
    const first = seen.get(text);
    if (first === undefined) seen.set(text, index);
    if (first === undefined) return [];
    const at = (place: number): Path => [...path, 'options', place, 'text'];
    return [
      {
        level: 'error',
        rule: 'same-option',
        path: at(index),
        first: at(first),
        message: 'Two options of one question say the same. Change one.',
      },
    ];
  });
}

/** Longer than every other option by half and by 20 letters: then length alone gives the key away. Our own figures. */
function keyTooLong({ options }: SingleQuestion, path: Path): PackFault[] {
  const index = options.findIndex((option) => option.key === true);
  const length = options[index]?.text.length ?? 0;
  const next = Math.max(...options.filter((_, other) => other !== index).map((option) => option.text.length));
  if (length < 1.5 * next || length < next + 20) return [];
  const message = `The key has ${length} letters and the longest wrong option ${next}, so its length gives it away. Shorten the key, or move detail into the explanation.`;
  return [{ level: 'warning', rule: 'longest-key', path: [...path, 'options', index, 'text'], message }];
}

const catchAlls = ['all of the above', 'none of the above', 'all of these', 'none of these', 'both of these', 'any of these'];

function catchAll({ options }: SingleQuestion, path: Path): PackFault[] {
  return options.flatMap((option, index): PackFault[] => {
    const phrase = catchAlls.find((words) => plain(option.text).includes(words));
    if (phrase === undefined) return [];
    const message = `"${phrase}" tests reading, not knowledge, and the options are shown in changing order. Write an option of its own.`;
    return [{ level: 'warning', rule: 'catch-all-option', path: [...path, 'options', index, 'text'], message }];
  });
}

/** Case, spaces and a last full stop put aside. */
function plain(text: string): string {
  return text.normalize('NFC').toLowerCase().replace(/\s+/g, ' ').replace(/\.$/, '').trim();
}
