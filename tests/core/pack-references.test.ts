import { describe, expect, it } from 'vitest';
import type { Pack } from '../../src/core/pack.js';
import { draftOf, type PackDraft, type PackFault } from '../../src/core/pack-draft.js';
import { checkIds, checkPrefixes, checkReferences, checkSources } from '../../src/core/pack-references.js';
import { smallPack } from '../support/small-pack.js';

/** The small pack after one change. */
function changed(change: (pack: Pack) => void): PackDraft {
  const pack = structuredClone(smallPack());
  change(pack);
  return draftOf(pack);
}
const at = (faults: PackFault[]): string[] => faults.map(({ level, rule, path }) => `${level} ${rule} ${path.join('.')}`);
const first = <T>(list: T[]): T => list[0] as T;

describe('the references of a pack', () => {
  it('are all sound in a sound pack', () => {
    const draft = draftOf(smallPack());
    expect([checkIds, checkReferences, checkPrefixes, checkSources].flatMap((check) => check(draft))).toEqual([]);
  });

  it.each<[string, (pack: Pack) => void, string[]]>([
    ["an objective's topic", (pack) => (first(pack.objectives).topic = 'ZZ'), ['objectives.0.topic']],
    ["an objective's caution", (pack) => (first(pack.objectives).caution = 'zz'), ['objectives.0.caution']],
    ["a fact's source", (pack) => (first(first(pack.objectives).facts).source = 'zz'), ['objectives.0.facts.0.source']],
    ["a question's objective", (pack) => (first(pack.questions).objective = 'ZZ-01'), ['questions.0.objective']],
    ["a question's source", (pack) => first(pack.questions).sources.push('zz'), ['questions.0.sources.1']],
    ["a question's caution", (pack) => (first(pack.questions).caution = 'zz'), ['questions.0.caution']],
    ["a family's objective", (pack) => first(pack.families).objectives.push('ZZ-01'), ['families.0.objectives.1']],
    ["a family's source", (pack) => (first(pack.families).sources = ['zz']), ['families.0.sources.0']],
    ["a family's caution", (pack) => (first(pack.families).caution = 'zz'), ['families.0.caution']],
    [
      "a constant's source",
      (pack) => (first(pack.families).constants['V'] = { value: 1, unit: 'V', source: 'zz', basis: 'read' }),
      ['families.0.constants.V.source'],
    ],
    [
      "a region's caution",
      (pack) => (first(pack.families).regions.eu.override = { caution: 'zz' }),
      ['families.0.regions.eu.override.caution'],
    ],
    [
      "a region's constant",
      (pack) => (first(pack.families).regions.eu.override = { constants: { V: { value: 1, unit: 'V', source: 'zz', basis: 'read' } } }),
      ['families.0.regions.eu.override.constants.V.source'],
    ],
  ])('are missed when %s is not there', (_what, change, paths) => {
    expect(at(checkReferences(changed(change)))).toEqual(paths.map((path) => `error missing-reference ${path}`));
  });

  it('are checked in entries that the schema refused', () => {
    const draft = draftOf(smallPack());
    draft.questions.push({ raw: { sources: ['book', 'nook'] }, whole: null }, { raw: null, whole: null }, { raw: 'x', whole: null });
    const faults = checkReferences(draft);
    expect(at(faults)).toEqual(['error missing-reference questions.6.sources.1']);
    expect(faults[0]?.message).toContain('Did you mean "book"?');
  });

  it.each(['topics', 'objectives', 'cautions', 'sources', 'questions', 'families'] as const)(
    'are not clear when two %s have one id',
    (kind) => {
      const draft = draftOf(smallPack());
      (draft[kind] as unknown[]).push(first(draft[kind] as unknown[]));
      const last = draft[kind].length - 1;
      const id = kind === 'topics' || kind === 'objectives' ? 'code' : 'id';
      const faults = checkIds(draft);
      expect(at(faults)).toEqual([`error duplicate-id ${kind}.${last}.${id}`]);
      expect(faults[0]?.first).toEqual([kind, 0, id]);
    },
  );

  it('may share an id between lists of different kinds', () => {
    expect(checkIds(changed((pack) => (first(pack.cautions).id = 'book')))).toEqual([]);
  });

  it('agree with what a code begins with', () => {
    const draft = changed((pack) => {
      first(pack.questions).id = 'AA-02-009';
      first(pack.objectives).topic = 'BB';
    });
    expect(at(checkPrefixes(draft))).toEqual(['error wrong-prefix objectives.0.code', 'error wrong-prefix questions.0.id']);
  });

  it('may name a source from memory, but not only such sources', () => {
    const memory = { id: 'hearsay', title: 'Hearsay', short: 'Hearsay', basis: 'memory' as const };
    const draft = (sources: string[]): PackDraft =>
      changed((pack) => {
        pack.sources.push(memory, { ...memory, id: 'rumour' });
        first(pack.questions).sources = sources;
        first(pack.families).sources = sources;
      });
    expect(checkSources(draft(['hearsay', 'book']))).toEqual([]);
    expect(at(checkSources(draft(['hearsay', 'rumour'])))).toEqual([
      'error memory-only questions.0.sources',
      'error memory-only families.0.sources',
    ]);
  });
});
