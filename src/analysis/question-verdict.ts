import { chanceOf } from '../core/analysis/first-sight.js';
import { judgeQuestion, type Sign, type Verdict } from '../core/analysis/flags.js';
import { earlier, nothing, type GatheredFigures, type Wording } from '../core/analysis/gathered.js';
import { letterOf } from '../core/tasks/task.js';
import type { OutlineRow } from './question-outline-store.js';

/** What the figures of one question are a sign of, and what that is worth in a list. */

/** What each revision offers, as figures take it. */
export const wordingsOf = ({ kind, wordings }: OutlineRow): Wording[] =>
  wordings.map(({ revision, names, keys }) => {
    const key = keys.indexOf(true);
    return {
      revision,
      names,
      values: kind === 'numeric' ? names : names.map((_, index) => String(index)),
      key: key < 0 ? null : String(key),
    };
  });

/** With fewer who can be held against the rest a correlation is not looked at, as with fewer answers. */
export const fewestHeld = 10;

/** A chance finding in one interval of forty at an end that matters, where there is nothing to find at all. */
const endOfInterval = 0.025;

export function verdictOf({ kind, parts, wordings, revision }: OutlineRow, figures: GatheredFigures): Verdict {
  const present = wordings.find((wording) => wording.revision === revision);
  const isHeld = figures.held >= fewestHeld;
  const options = figures.choices
    .filter(({ value, people }) => value !== nothing && value !== earlier && (kind !== 'numeric' || people > 0))
    .map(({ value, people, rest, restInterval, key }) => ({
      text: kind === 'numeric' ? `“${present?.labels[present.names.indexOf(value)] ?? 'Another wrong number'}”` : letterOf(Number(value)),
      count: people,
      correlation: isHeld ? rest : null,
      interval: isHeld ? restInterval : null,
      key,
    }));
  const { upper, lower } = figures.groups ?? { upper: null, lower: null };
  const verdict = judgeQuestion({
    n: figures.n,
    right: figures.right,
    options,
    chance: chanceOf(kind, parts),
    itemRest: isHeld ? figures.itemRest : null,
    itemRestInterval: isHeld ? figures.itemRestInterval : null,
    upperLower27: upper === null || lower === null || !isHeld ? null : upper.right / upper.of - lower.right / lower.of,
  });
  // A number is typed: that hardly anybody makes a mistake says nothing against naming it.
  const idle = new Set<Sign['id']>(kind === 'numeric' ? ['hardly-chosen', 'not-chosen'] : []);
  return { ...verdict, signs: verdict.signs.filter(({ id }) => !idle.has(id)) };
}

/** How many intervals of a question could raise a sign: that of the right answer, and those of the wrong ones that were chosen. */
export const intervalsOf = ({ held, itemRestInterval, choices }: GatheredFigures): number =>
  held < fewestHeld || itemRestInterval === null
    ? 0
    : 1 + choices.filter(({ key, value, restInterval }) => !key && value !== nothing && value !== earlier && restInterval !== null).length;

/** How many signs so many intervals raise by chance, on average, if no answer had anything to do with what people know. */
export const falseSigns = (intervals: number): number => intervals * endOfInterval;

/** The gravest first: what speaks against the key before what may only be hard. */
const gravity: readonly Sign['id'][] = ['below-chance', 'negative', 'strong-chose-wrong', 'hard'];

export function rankOf(signs: readonly Sign[]): number {
  const places = signs.map(({ id }) => gravity.indexOf(id)).filter((place) => place >= 0);
  return places.length === 0 ? gravity.length : Math.min(...places);
}
