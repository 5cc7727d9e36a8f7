import type { Pack } from '../../src/core/pack.js';
import { skillSchema, type Skill } from '../../src/core/skill.js';
import { smallPack } from './small-pack.js';

/** Three skills for the small pack: one for everywhere, one British, one North American. */

const skill = (id: string, title: string, criteria: string[], more: Partial<Skill> = {}): Skill =>
  skillSchema.parse({
    id,
    title,
    objectives: ['AA-01'],
    minutes: 10,
    brings: ['A stand-in'],
    showing: ['Nothing is live.'],
    criteria: criteria.map((text) => ({ text, why: `Why: ${text}` })),
    stop: 'Stop at once if it is plugged in.',
    caution: 'mains',
    sources: ['book'],
    checked: '2026-11-28',
    ...more,
  });

export const smallSkills: Skill[] = [
  skill('lead', 'Look over a lead', ['Unplugs it.', 'Looks along it.', 'Labels it.']),
  skill('plug', 'Wire a plug', ['Shows its end.', 'Names the cores.', 'Clamps the grip.', 'Lets it be seen.'], { regions: ['uk'] }),
  skill('panel', 'Find the panel', ['Finds it.', 'Names it.', 'Leaves it shut.'], { regions: ['na'] }),
];

export const packWithSkills = (skills: Skill[] = smallSkills): Pack => ({ ...structuredClone(smallPack()), skills });
