import { describe, expect, it } from 'vitest';
import { checkPack } from '../../src/core/pack-checks.js';
import { draftOf, type PackFault } from '../../src/core/pack-draft.js';
import { packFileSchemas, type Pack } from '../../src/core/pack.js';
import { checkIds, checkReferences } from '../../src/core/pack-references.js';
import type { Skill } from '../../src/core/skill.js';
import { packWithSkills, smallSkills } from '../support/small-skills.js';

/** The practical skills of a pack: their shape, and what they refer to. */

const lead = smallSkills[0] as Skill;
const taken = (skill: object): boolean => packFileSchemas.skills.safeParse([skill]).success;

describe('a skill', () => {
  it('is taken as documented, without regions and without what ends it', () => {
    expect(taken(lead)).toBe(true);
    const { stop: _, ...rest } = lead;
    expect(taken(rest)).toBe(true);
    expect(taken({ ...lead, regions: ['uk', 'eu'] })).toBe(true);
  });

  const criterion = { text: 'Looks.', why: 'It may be hot.' };
  it.each<[string, object]>([
    ['a key that is not known', { colour: 'red' }],
    ['an id with a stroke', { id: 'a/b' }],
    ['no objective', { objectives: [] }],
    ['nine objectives', { objectives: Array<string>(9).fill('AA-01') }],
    ['no time', { minutes: 0 }],
    ['half a minute', { minutes: 1.5 }],
    ['nothing on the table', { brings: [] }],
    ['no word on how to show it', { showing: [] }],
    ['five sentences on how to show it', { showing: Array<string>(5).fill('So.') }],
    ['two criteria', { criteria: [criterion, criterion] }],
    ['nine criteria', { criteria: Array<object>(9).fill(criterion) }],
    ['a criterion without its reason', { criteria: [criterion, criterion, { text: 'Looks.' }] }],
    ['an empty criterion', { criteria: [criterion, criterion, { ...criterion, text: ' ' }] }],
    ['no caution', { caution: undefined }],
    ['no source', { sources: [] }],
    ['a region that is not known', { regions: ['mars'] }],
    ['no region at all', { regions: [] }],
    ['a day that is none', { checked: 'today' }],
  ])('is refused with %s', (_what, change) => {
    expect(taken({ ...lead, ...change })).toBe(false);
  });

  it('comes sixty to a pack at most', () => {
    const many = (count: number) => Array.from({ length: count }, (_, at) => ({ ...lead, id: `lead-${at}` }));
    expect(packFileSchemas.skills.safeParse(many(60)).success).toBe(true);
    expect(packFileSchemas.skills.safeParse(many(61)).success).toBe(false);
  });
});

const at = (faults: PackFault[]): string[] => faults.map(({ level, rule, path }) => `${level} ${rule} ${path.join('.')}`);
const changed = (change: (skills: Skill[], pack: Pack) => void): Pack => {
  const pack = packWithSkills(structuredClone(smallSkills));
  change(pack.skills, pack);
  return pack;
};
const first = (skills: Skill[]): Skill => skills[0] as Skill;

describe('the skills of a pack', () => {
  it('may be none, and are sound when what they name is there', () => {
    expect(checkPack(packWithSkills([]))).toEqual([]);
    expect(checkPack(packWithSkills())).toEqual([]);
  });

  it.each<[string, (skills: Skill[], pack: Pack) => void, string]>([
    ['an objective that is not there', (skills) => first(skills).objectives.push('ZZ-01'), 'error missing-reference skills.0.objectives.1'],
    ['a caution that is not there', (skills) => (first(skills).caution = 'zz'), 'error missing-reference skills.0.caution'],
    ['a source that is not there', (skills) => first(skills).sources.push('zz'), 'error missing-reference skills.0.sources.1'],
    ['an id that is there already', (skills) => ((skills[1] as Skill).id = 'lead'), 'error duplicate-id skills.1.id'],
    [
      'a criterion that stands in it twice, but for capitals',
      (skills) => (first(skills).criteria[2] = { text: 'UNPLUGS it.', why: 'So.' }),
      'error said-twice skills.0.criteria.2.text',
    ],
    ['an objective twice', (skills) => first(skills).objectives.push('AA-01'), 'error said-twice skills.0.objectives.1'],
    ['a source twice', (skills) => first(skills).sources.push('book'), 'error said-twice skills.0.sources.1'],
    [
      'only sources that nobody has looked up',
      (skills, pack) => {
        pack.sources.push({ id: 'hearsay', title: 'What one hears', short: 'Hearsay', basis: 'memory' });
        first(skills).sources = ['hearsay'];
      },
      'error memory-only skills.0.sources',
    ],
    [
      'a region that the pack does not serve',
      (_skills, pack) => (pack.head.regions = ['uk', 'eu']),
      'warning region-not-in-pack skills.2.regions',
    ],
  ])('are told of %s', (_what, change, expected) => {
    expect(at(checkPack(changed(change)))).toEqual([expected]);
  });

  it('are looked at where the schema refused them, too', () => {
    const draft = draftOf(packWithSkills());
    draft.skills.push({ raw: { id: 'lead', sources: ['nook'], caution: 7 }, whole: null }, { raw: null, whole: null });
    expect(at([...checkIds(draft), ...checkReferences(draft)])).toEqual([
      'error duplicate-id skills.3.id',
      'error missing-reference skills.3.sources.0',
    ]);
  });
});
