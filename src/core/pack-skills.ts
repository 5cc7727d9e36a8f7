import type { PackDraft, PackFault, Path } from './pack-draft.js';
import type { Skill } from './skill.js';

/** A skill is shown where its pack is taught, and each of its criteria and objectives stands in it once. */
export function checkSkills(draft: PackDraft): PackFault[] {
  return draft.skills.flatMap(({ whole }, index) => {
    if (whole === null) return [];
    const path = ['skills', index];
    return [
      ...outside(whole, draft.head?.regions ?? null, path),
      ...twice(
        whole.criteria.map(({ text }) => text.toLowerCase()),
        'criterion',
        (at) => [...path, 'criteria', at, 'text'],
      ),
      ...twice(whole.objectives, 'objective', (at) => [...path, 'objectives', at]),
      ...twice(whole.sources, 'source', (at) => [...path, 'sources', at]),
    ];
  });
}

function outside({ regions = [] }: Skill, served: readonly string[] | null, path: Path): PackFault[] {
  const strange = served === null ? [] : regions.filter((region) => !served.includes(region));
  if (strange.length === 0) return [];
  const message = `The skill is for ${strange.join(', ')}, which the pack does not list under regions. Add it in pack.yaml, or leave it out here.`;
  return [{ level: 'warning', rule: 'region-not-in-pack', path: [...path, 'regions'], message }];
}

function twice(list: readonly string[], what: string, path: (at: number) => Path): PackFault[] {
  return list.flatMap((entry, at): PackFault[] => {
    const first = list.indexOf(entry);
    if (first === at) return [];
    const message = `This ${what} stands in the skill already. Take it out, or say something else.`;
    return [{ level: 'error', rule: 'said-twice', path: path(at), first: path(first), message }];
  });
}
