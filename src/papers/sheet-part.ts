import { drawingView } from '../core/tasks/asked-part.js';
import { letterOf } from '../core/tasks/task.js';
import type { SheetItem } from './sheet-item.js';

/** A question as it is asked, for pages that take no answer: its options by letter and its drawing, and nothing of the key. */

export function optionsOf({ task }: Pick<SheetItem, 'task'>): { letter: string; text: string }[] {
  const texts = task.kind === 'choice' ? task.options.map(({ text }) => text) : task.places.map(({ text }) => text);
  return texts.map((text, index) => ({ letter: letterOf(index), text }));
}

/**
 * @param prefix of the ids in the drawing: a page that shows several needs several
 * @param idOf the control that a letter on the drawing chooses; none on pages that take no answer
 */
export function sheetDrawing(
  { task, drawing }: Pick<SheetItem, 'task' | 'drawing'>,
  prefix = 'drawing',
  idOf: ((letter: string) => string) | null = null,
): { svg: string } | null {
  if (task.kind === 'choice') return drawing === null ? null : drawingView(drawing, true, [], prefix);
  const marks = task.places.map(({ part }, index) => {
    const letter = letterOf(index);
    return { letter, at: part.at, look: 'plain' as const, chooses: idOf === null ? null : idOf(letter) };
  });
  return drawingView(task.drawing, false, marks, prefix);
}
