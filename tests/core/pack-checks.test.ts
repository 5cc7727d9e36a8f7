import { describe, expect, it } from 'vitest';
import { checkDraft, checkPack, coverageOf } from '../../src/core/pack-checks.js';
import type { Pack } from '../../src/core/pack.js';
import { draftOf, type PackFault } from '../../src/core/pack-draft.js';
import { smallPack } from '../support/small-pack.js';

function changed(change: (pack: Pack) => void): Pack {
  const pack = structuredClone(smallPack());
  change(pack);
  return pack;
}
const at = (faults: PackFault[]): string[] => faults.map(({ level, rule, path }) => `${level} ${rule} ${path.join('.')}`);

describe('checkPack', () => {
  it('finds nothing in a sound pack', () => {
    expect(checkPack(smallPack())).toEqual([]);
  });

  it.each<[string, (pack: Pack) => void, string[]]>([
    [
      'a question that says it asks the same as a later revision',
      (pack) => {
        if (pack.questions[0]) pack.questions[0].sameSince = 5;
      },
      ['error same-since questions.0.sameSince'],
    ],
    ['an objective that nothing asks about', (pack) => void pack.questions.splice(1, 1), ['warning objective-unasked objectives.1.code']],
    [
      'a topic without objectives',
      (pack) => void pack.topics.push({ code: 'DD', title: 'D', blurb: 'D.' }),
      ['warning topic-empty topics.3.code'],
    ],
    [
      'a question without the caution of its objective',
      (pack) => void delete pack.questions[2]?.caution,
      ['warning caution-missing questions.2.id'],
    ],
    [
      'a question for a region that the pack does not serve',
      (pack) => {
        pack.head.regions = ['uk'];
        if (pack.questions[3]) pack.questions[3].regions = ['uk', 'na'];
      },
      ['warning region-not-in-pack questions.3.regions'],
    ],
    [
      'an option that says what another says',
      (pack) => {
        const question = pack.questions[0];
        const options = question?.kind === 'single' ? question.options : [];
        if (options[2] && options[1]) options[2].text = options[1].text;
      },
      ['error same-option questions.0.options.2.text'],
    ],
    [
      'a formula with a name that nothing has',
      (pack) => {
        if (pack.families[0]) pack.families[0].answer.expr = 'V * Q';
      },
      ['error family families.0.answer.expr'],
    ],
    ['a reference to nothing', (pack) => void pack.questions[0]?.sources.push('zz'), ['error missing-reference questions.0.sources.1']],
  ])('finds %s', (_what, change, expected) => {
    expect(at(checkPack(changed(change)))).toEqual(expected);
  });

  it('asks for no caution where the objective has none', () => {
    const pack = changed((each) => {
      delete each.questions[0]?.caution;
      delete each.objectives[0]?.caution;
    });
    expect(checkPack(pack)).toEqual([]);
  });

  it('begins every message with a capital letter and ends it with a full stop or a question mark', () => {
    const pack = changed((each) => {
      each.questions.splice(1, 1);
      each.topics.push({ code: 'DD', title: 'D', blurb: 'D.' });
      if (each.families[0]) each.families[0].answer.expr = 'V * Q';
      if (each.objectives[0]) each.objectives[0].topic = 'ZZ';
    });
    const messages = checkPack(pack).map(({ message }) => message);
    expect(messages.length).toBeGreaterThan(4);
    for (const message of messages) expect(message).toMatch(/^["A-Z][^]*[.?]$/);
  });
});

describe('checkDraft', () => {
  it('says of nothing that it is missing while the pack is not complete', () => {
    const pack = changed((each) => {
      each.sources = [];
      each.questions = each.questions.slice(0, 1);
    });
    expect(checkDraft(draftOf(pack), { complete: false })).toEqual([]);
    expect(checkDraft(draftOf(pack)).length).toBeGreaterThan(0);
  });

  it('draws from no family when asked not to', () => {
    const pack = changed((each) => {
      if (each.families[0]) each.families[0].answer.expr = 'V * Q';
    });
    expect(checkDraft(draftOf(pack), { tryFamilies: false })).toEqual([]);
  });
});

describe('coverageOf', () => {
  it('counts questions, and every objective that a family names', () => {
    const pack = changed((each) => {
      each.families[0]?.objectives.push('CC-02');
      each.questions.push({ ...structuredClone(each.questions[0]), id: 'AA-01-002' } as Pack['questions'][number]);
    });
    // The small pack: one question for each of six objectives, one family for AA-01 and one for BB-01.
    expect(coverageOf(draftOf(pack))).toEqual([
      { objective: 'AA-01', questions: 2, families: 1 },
      { objective: 'AA-02', questions: 1, families: 0 },
      { objective: 'BB-01', questions: 1, families: 1 },
      { objective: 'BB-02', questions: 1, families: 0 },
      { objective: 'CC-01', questions: 1, families: 0 },
      { objective: 'CC-02', questions: 1, families: 1 },
    ]);
  });
});
