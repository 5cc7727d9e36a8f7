import { weekdays } from '../core/calendar.js';
import type { FieldPart } from '../core/page-parts.js';
import type { PaperRow } from '../questions/index.js';
import { nameOf } from '../study/index.js';
import type { ClassHead } from './head-store.js';
import type { ClassFieldsPart } from './people-page-types.js';

/** The fields of a class as they stand in its form: as typed, or as they are. */

export interface ClassTyped {
  name: FieldPart;
  exam: FieldPart;
  paper: FieldPart;
  meetsOn: FieldPart;
  meetsAt: FieldPart;
}

const plain = (value: string): FieldPart => ({ value, why: null });

export const emptyClass: ClassTyped = { name: plain(''), exam: plain(''), paper: plain(''), meetsOn: plain(''), meetsAt: plain('') };

export const typedClass = ({ name, examOn, paper, meetsOn, meetsAt }: ClassHead): ClassTyped => ({
  name: plain(name),
  exam: plain(examOn ?? ''),
  paper: plain(paper ?? ''),
  meetsOn: plain(meetsOn === null ? '' : String(meetsOn)),
  meetsAt: plain(meetsAt ?? ''),
});

/** @param stands the paper that the class has; it can be kept though its pack is gone */
export function classFields(typed: ClassTyped, papers: readonly PaperRow[], stands: string | null): ClassFieldsPart {
  const names = papers.map(nameOf);
  const gone = stands !== null && !names.includes(stands) ? [{ value: stands, text: `${stands}, which is no longer in the bank` }] : [];
  const offered = papers.map((paper, index) => ({
    value: names[index] ?? '',
    text: `${paper.blueprint.title}, ${paper.blueprint.passMark} of ${paper.blueprint.questions} to pass (${paper.packTitle})`,
  }));
  const chosen = (choices: { value: string; text: string }[], value: string) =>
    choices.map((choice) => ({ ...choice, chosen: choice.value === value }));
  return {
    name: typed.name,
    exam: typed.exam,
    paper: {
      choices: chosen([{ value: '', text: 'None yet' }, ...offered, ...gone], typed.paper.value),
      why: typed.paper.why,
      hint:
        papers.length === 0
          ? 'No pack on this server has a paper yet. Choose one here when there is.'
          : 'Chances of passing and the session plan go by it. It can be chosen later.',
    },
    meetsOn: {
      choices: chosen(
        // The week begins on Monday.
        [{ value: '', text: 'No fixed day' }, ...[1, 2, 3, 4, 5, 6, 0].map((day) => ({ value: String(day), text: weekdays[day] ?? '' }))],
        typed.meetsOn.value,
      ),
      why: typed.meetsOn.why,
    },
    meetsAt: typed.meetsAt,
  };
}

/** The first of the fields that did not fit. */
export function faultIn(typed: ClassTyped): { why: string; target: string } | null {
  const first = Object.entries(typed as unknown as Record<string, FieldPart>).find(([, { why }]) => why !== null);
  return first === undefined ? null : { why: first[1].why ?? '', target: first[0] };
}
