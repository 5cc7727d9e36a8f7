import type { ListKind, PackDraft, PackFault } from '../pack-draft.js';

/** Entries that can excuse findings about themselves. */
const lists = ['questions', 'families', 'objectives', 'sources'] as const satisfies ListKind[];

/**
 * Takes out the warnings that an entry excuses with a reason. An excuse that excuses nothing is told, so that none outlives its cause;
 * errors cannot be excused.
 */
export function excused(faults: readonly PackFault[], draft: PackDraft): PackFault[] {
  const used = new Set<string>();
  const left = faults.filter(({ level, rule, path }) => {
    const [kind, index] = path;
    if (level === 'error' || typeof index !== 'number') return true;
    const at = excusesOf(draft, kind, index).findIndex((excuse) => excuse.rule === rule);
    if (at >= 0) used.add(`${kind} ${index} ${at}`);
    return at < 0;
  });
  const idle = lists.flatMap((kind) =>
    draft[kind].flatMap((_, index) =>
      excusesOf(draft, kind, index).flatMap(({ rule }, at): PackFault[] => {
        if (used.has(`${kind} ${index} ${at}`)) return [];
        const message = `Nothing here breaks the rule "${rule}" (or it is an error, which cannot be excused). Take the excuse out.`;
        return [{ level: 'warning', rule: 'idle-excuse', path: [kind, index, 'excuses', at], message }];
      }),
    ),
  );
  return [...left, ...idle];
}

function excusesOf(draft: PackDraft, kind: unknown, index: number): readonly { rule: string }[] {
  const list = lists.find((each) => each === kind);
  if (list === undefined) return [];
  const whole = draft[list][index]?.whole;
  return whole?.excuses ?? [];
}
