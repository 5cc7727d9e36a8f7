import type { Region } from '../core/syllabus.js';
import type { SkillRow } from '../questions/index.js';

/** Which skills belong to whom. */

/** Slug of the pack and id of the skill, parted by a stroke: what a signature names. */
export const keyOf = ({ pack, skill }: Pick<SkillRow, 'pack'> & { skill: { id: string } }): string => `${pack}/${skill.id}`;

/** An id for a page: neither part can hold an underscore. */
export const anchorOf = (key: string): string => key.replace('/', '_');

export const holdsIn = ({ skill }: Pick<SkillRow, 'skill'>, region: string): boolean =>
  skill.regions === undefined || skill.regions.includes(region as Region);

/** The skills of the pack that a class works towards; of all packs while none is chosen. */
export function ofPaper<T extends { pack: string }>(rows: readonly T[], paper: string | null): T[] {
  const pack = paper?.split('/')[0];
  return rows.filter((row) => pack === undefined || row.pack === pack);
}
