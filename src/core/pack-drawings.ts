import type { Drawing } from './drawing.js';
import { nearest } from './nearest.js';
import { textAt, type PackDraft, type PackFault, type Path } from './pack-draft.js';

/** Places must be parts of their drawing, and a drawing must be shown somewhere. */
export function checkDrawings(draft: PackDraft, complete: boolean): PackFault[] {
  const drawings = new Map(draft.drawings.flatMap(({ whole }) => (whole === null ? [] : [[whole.id, whole.parts.map(({ id }) => id)]])));
  const strangers = draft.questions.flatMap(({ whole }, index): PackFault[] => {
    if (whole?.kind !== 'place') return [];
    const parts = drawings.get(whole.drawing);
    if (parts === undefined) return [];
    return whole.places.flatMap(({ part }, place): PackFault[] => {
      const path = ['questions', index, 'places', place, 'part'];
      if (whole.places.findIndex((other) => other.part === part) < place)
        return [{ level: 'error', rule: 'same-option', path, message: `The part "${part}" is named twice. Each place stands once.` }];
      if (parts.includes(part)) return [];
      const near = nearest(part, parts);
      const cure = near ? `Did you mean "${near}"?` : `Its parts are: ${parts.join(', ')}.`;
      return [{ level: 'error', rule: 'missing-part', path, message: `The drawing "${whole.drawing}" has no part "${part}". ${cure}` }];
    });
  });
  const crowded = draft.drawings.flatMap(({ whole }, index) => (whole === null ? [] : crowdedMarks(whole, ['drawings', index])));
  return [...strangers, ...crowded, ...(complete ? unused(draft) : [])];
}

/** Diameter of a mark, in the drawing's own units. */
const markWidth = 42;

/** Marks that cover one another would stand for the wrong part. */
function crowdedMarks({ id, parts }: Drawing, path: Path): PackFault[] {
  return parts.flatMap((part, index): PackFault[] => {
    const other = parts.slice(0, index).find(({ at }) => Math.hypot(at[0] - part.at[0], at[1] - part.at[1]) < markWidth);
    if (other === undefined) return [];
    const message = `In the drawing "${id}" the marks of "${other.id}" and "${part.id}" lie on one another. Keep the middles of marks 46 units apart (data-mark).`;
    return [{ level: 'error', rule: 'drawing-marks', path, message }];
  });
}

function unused(draft: PackDraft): PackFault[] {
  const used = new Set(draft.questions.map(({ raw }) => textAt(raw, 'drawing')));
  return draft.drawings.flatMap(({ whole }, index): PackFault[] => {
    if (whole === null || used.has(whole.id)) return [];
    const message = `No question shows the drawing "${whole.id}". Name it in one ("drawing: ${whole.id}"), or take the file out.`;
    return [{ level: 'warning', rule: 'drawing-unused', path: ['drawings', index], message }];
  });
}
