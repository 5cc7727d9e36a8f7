import { unitSpoken } from '../families/draw.js';
import { drawingSvg, type Drawing, type DrawingMark } from '../drawing.js';
import {
  letterOf,
  type Entry,
  type NumberTask,
  type OrderTask,
  type PairsTask,
  type PlaceTask,
  type SeveralTask,
  type Task,
} from './task.js';

/** What a page shows of a question before it is answered. Exactly one of the kinds is there; nothing in it tells the key. */
export interface AskedPart {
  stem: string;
  /** What to do, where the kind does not show it by itself. */
  lead: string | null;
  /** Letters A, B, ... in the order shown; `value` is what is sent. */
  options: { letter: string; value: string; text: string; chosen: boolean }[] | null;
  /** The box for a typed number. */
  entry: { label: string; unit: string; unitSpoken: string; readsUnit: string; hint: string; value: string; why: string | null } | null;
  statements: { letter: string; name: string; text: string; yes: boolean; no: boolean }[] | null;
  /** Each with the places it may be given. */
  steps: PartChoice[] | null;
  /** Each with what it may be matched with. */
  pairs: PartChoice[] | null;
  /** What they may be matched with, for paper. */
  rights: string[];
  /** Places that carry letters on the drawing; `id` is that of the control. */
  places: { letter: string; id: string; value: string; text: string; chosen: boolean }[] | null;
  drawing: DrawingView | null;
}

export interface PartChoice {
  letter: string;
  name: string;
  text: string;
  choices: { value: string; text: string; chosen: boolean }[];
}

export interface DrawingView {
  /** SVG made by the core from elements it knows; safe to print as it is. */
  svg: string;
}

const nothing = {
  lead: null,
  options: null,
  entry: null,
  statements: null,
  steps: null,
  pairs: null,
  rights: [],
  places: null,
  drawing: null,
};

/**
 * @param entry what came back incomplete and is kept; at first empty
 * @param why what is wrong with a typed number
 */
export function askedPart(stem: string, task: Task, drawing: Drawing | null, entry: Entry, why: string | null): AskedPart {
  const base = { ...nothing, stem, drawing: drawing === null ? null : drawingView(drawing, true, []) };
  switch (task.kind) {
    case 'choice': {
      const options = task.options.map(({ value, text }, index) => ({
        letter: letterOf(index),
        value,
        text,
        chosen: value === entry.option,
      }));
      return { ...base, options };
    }
    case 'number':
      return { ...base, entry: numberEntry(task, entry, why) };
    case 'several':
      return { ...base, lead: 'Judge each statement by itself.', statements: statements(task, entry) };
    case 'order':
      return { ...base, lead: `Give each step its place: 1 comes first, ${task.steps.length} last.`, steps: steps(task, entry) };
    case 'pairs':
      return { ...base, lead: pairsLead(task), pairs: pairs(task, entry), rights: task.rights.map(({ text }) => text) };
    case 'place':
      return { ...base, lead: 'Choose the letter on the drawing, or in the list below it.', ...places(task, entry) };
  }
}

/** @param prefix of its ids: a page that shows a drawing twice needs two */
export function drawingView(drawing: Drawing, named: boolean, marks: readonly DrawingMark[], prefix = 'drawing'): DrawingView {
  return { svg: drawingSvg(drawing, { named, marks, prefix }) };
}

function numberEntry({ draw }: NumberTask, entry: Entry, why: string | null): AskedPart['entry'] {
  const { unit } = draw.key;
  const hint = `Type a number, with or without its unit.${draw.hint === null ? '' : ` Give ${draw.hint}.`}`;
  return { label: 'Your answer', unit, unitSpoken: unitSpoken(unit), readsUnit: unit, hint, value: entry.value, why };
}

function statements(task: SeveralTask, { parts }: Entry): AskedPart['statements'] {
  return task.statements.map(({ place, text }, index) => {
    return { letter: letterOf(index), name: `part-${place}`, text, yes: parts[place] === 't', no: parts[place] === 'f' };
  });
}

/** Named by their place on the page, since their place in the pack is the answer. */
function steps(task: OrderTask, { parts }: Entry): PartChoice[] {
  return task.steps.map(({ text }, index) => ({
    letter: letterOf(index),
    name: `part-${index}`,
    text,
    choices: task.steps.map((_, place) => ({
      value: String(place + 1),
      text: String(place + 1),
      chosen: parts[index] === String(place + 1),
    })),
  }));
}

function pairs(task: PairsTask, { parts }: Entry): PartChoice[] {
  return task.lefts.map(({ place, text }, index) => ({
    letter: letterOf(index),
    name: `part-${place}`,
    text,
    choices: task.rights.map((right, shown) => ({
      value: String(shown),
      text: `${shown + 1}. ${right.text}`,
      chosen: parts[place] === String(shown),
    })),
  }));
}

function pairsLead(task: PairsTask): string {
  const more = task.rights.length > task.lefts.length ? ' Some of the answers are left over.' : '';
  const twice = task.rights.length < task.lefts.length ? ' One may serve twice.' : '';
  return `Choose what goes with each.${more}${twice}`;
}

function places(task: PlaceTask, { option }: Entry): Pick<AskedPart, 'places' | 'drawing'> {
  const list = task.places.map(({ value, text }, index) => {
    return { letter: letterOf(index), id: `place-${value}`, value, text, chosen: value === option };
  });
  const marks = task.places.map(({ part, value }, index): DrawingMark => {
    return { letter: letterOf(index), at: part.at, look: 'plain', chooses: `place-${value}` };
  });
  return { places: list, drawing: drawingView(task.drawing, false, marks) };
}
