import { mkdir, readFile, symlink } from 'node:fs/promises';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { readPackFolder } from '../../src/packs/read-folder.js';
import { folderOf, goodPack, goodPackWith, short, tenFaults, type Files } from './temporary-pack.js';

/** What is found in a copy of the good pack with some files put in. Lines and columns are counted by hand. */
async function found(files: Files, of: 'error' | 'warning' | 'both' = 'both'): Promise<string[]> {
  const { findings } = await readPackFolder(await goodPackWith(files));
  return findings.filter(({ level }) => of === 'both' || level === of).map(short);
}

const question = (more: string): string => `questions:
  - id: LA-02-009
    revision: 1
    objective: LA-02
    kind: single
    demand: recall
    stem: What holds the feet of the ladder?
    options:
      - { text: One, key: true }
      - { text: Two, why: Reason. }
      - { text: Three, why: Reason. }
    explanation: Because.
    sources: [ladder-leaflet]
    caution: height
    checked: 2026-11-25
${more}`;

const head = `pack:
  id: second
  title: Second
  version: 1.0.0
  licence: CC0-1.0
  language: en
  authors: [Odo Brackle]
  regions: [uk]
  summary: Another.
`;

describe('readPackFolder', () => {
  it('loads a good pack as it is written', async () => {
    const { pack, findings, head, coverage } = await readPackFolder(goodPack);
    expect(findings).toEqual([]);
    expect(head).toEqual({ id: 'wobbling-basics', version: '1.2.0' });
    expect(coverage).toEqual([{ objective: 'LA-02', questions: 1, families: 1 }]);
    expect(pack?.head.summary).toBe('A small pack for tests.');
    expect(pack?.topics).toEqual([{ code: 'LA', title: 'Ladders', blurb: 'Going up and coming down.' }]);
    expect(pack?.objectives[0]?.misconceptions).toEqual(['Nearer is safer']);
    expect(pack?.sources.map(({ title }) => title)).toEqual(['Ladders: a leaflet (2024)', 'What people say']);
    expect(pack?.cautions).toEqual([{ id: 'height', sign: 'general', text: 'Stop if the ground is soft, and ask somebody.' }]);
    expect(pack?.questions).toEqual([
      {
        id: 'LA-02-001',
        revision: 2,
        objective: 'LA-02',
        kind: 'single',
        demand: 'apply',
        regions: ['uk'],
        stem: 'How far from the wall do the feet of a 4 m ladder stand?',
        options: [
          { text: '1', key: true },
          { text: 'no', why: 'That is no distance at all.' },
          { text: '2 m, or 12:30', why: 'Too far: the feet slide.' },
        ],
        order: 'fixed',
        explanation: 'One out for four up.\nLook at the ground as well.',
        sources: ['ladder-leaflet', 'hearsay'],
        caution: 'height',
        checked: '2026-11-25',
        excuses: [{ rule: 'mixed-options', reason: 'These show what YAML makes of such texts.' }],
      },
    ]);
    expect(pack?.families[0]).toMatchObject({
      id: 'nf-foot',
      inputs: { H: { min: 4, max: 8, step: 0.2 } },
      constants: {},
      mayCoincide: [],
    });
  });

  it('tells all ten faults of a file at once, each at its line and column, and gives no pack', async () => {
    const { pack, findings, head } = await readPackFolder(tenFaults);
    expect(pack).toBeNull();
    expect(head).toEqual({ id: 'wobbling-basics', version: '1.2.0' });
    expect(findings.map(short)).toEqual([
      'questions.yaml:6:13 wrong-value questions[0].demand',
      'questions.yaml:10:17 wrong-type questions[0].options[1].text',
      'questions.yaml:11:9 not-consistent questions[0].options[2].why',
      'questions.yaml:13:5 unknown-key questions[0].sorces',
      'questions.yaml:17:5 missing-key questions[1].stem',
      'questions.yaml:18:15 too-small questions[1].revision',
      'questions.yaml:19:16 missing-reference questions[1].objective',
      'questions.yaml:23:7 not-consistent questions[1].options',
      'questions.yaml:28:14 missing-reference questions[1].caution',
      'questions.yaml:29:14 wrong-format questions[1].checked',
    ]);
  });

  it('says in each message what is wrong and how to mend it', async () => {
    const { findings } = await readPackFolder(tenFaults);
    const [value, type, why, unknown, missing, small, objective, keys, caution, format] = findings.map(({ message }) => message);
    expect(value).toMatch(/"applied".*recall, apply, judge/);
    expect(type).toMatch(/"30" is read as a number.*'30'/);
    expect(why).toMatch(/must say why/);
    expect(unknown).toMatch(/"sorces".*Did you mean "sources"/);
    expect(missing).toMatch(/"stem" is missing.*stem: …/);
    expect(small).toMatch(/0.*at least 1/);
    expect(objective).toMatch(/"LA-03".*Did you mean "LA-02"/);
    expect(keys).toMatch(/exactly one option must be the key, and 2 are/i);
    expect(caution).toMatch(/"hight".*Did you mean "height"/);
    expect(format).toMatch(/"25 November".*2026-11-25/);
  });

  it('finds the same whatever the order in which the files were made', async () => {
    const files: [string, string][] = [
      ['z.yaml', question('')],
      ['a.yaml', 'topics:\n  - { code: LB, title: Other, blurb: None. }\n'],
      ['m/b.yml', 'sources:\n  - { id: third, title: Third, short: Third, basis: read }\n'],
      ['b/c.yaml', 'cautions:\n  - { id: wet, sign: electric, text: Mind. }\n  - { id: wet, sign: electric, text: Mind. }\n'],
    ];
    const one = await readPackFolder(await goodPackWith(Object.fromEntries(files)));
    const other = await readPackFolder(await goodPackWith(Object.fromEntries(files.reverse())));
    expect(one.findings.length).toBeGreaterThan(0);
    expect(other).toEqual(one);
  });

  it('stops at 200 findings, errors first, and says how many are left', async () => {
    const options = '      - { text: Long, key: true }\n      - { text: Two }\n'; // two faults a question: an option too few, and no reason
    const many = Array.from({ length: 150 }, (_, number) =>
      question('')
        .replace('questions:\n', '')
        .replace('-009', `-${100 + number}`)
        .replace(/ {6}- [^]*?Three.*\n/, options),
    );
    const { findings } = await readPackFolder(await goodPackWith({ 'q.yaml': `questions:\n${many.join('')}` }));
    expect(findings).toHaveLength(200);
    expect(findings.at(-1)).toMatchObject({ level: 'error', rule: 'too-many-findings' });
    expect(findings.at(-1)?.message).toContain('101 further'); // 300 in all, 199 of them listed
  });
});

describe('the folder of a pack', () => {
  it.each([
    ['no files', {}, ['pack.yaml:1:1 no-head']],
    ['a file without a known key', { 'x.yaml': 'a: 1\nquestion: []\n' }, ['x.yaml:1:1 unknown-kind a', 'x.yaml:2:1 unknown-kind question']],
    ['an empty file', { 'x.yaml': '# nothing\n' }, ['x.yaml:1:1 no-kind']],
    ['a list at the top', { 'x.yaml': '\n- a\n' }, ['x.yaml:2:1 no-kind']],
  ])('is told to have %s', async (_what, files, expected) => {
    const { pack, findings } = await readPackFolder(await folderOf(files));
    expect([pack, findings.map(short)]).toEqual([null, expected]);
  });

  it('may hold other files, names that begin with a point, and YAML three folders deep', async () => {
    const more = {
      'notes.md': '\0',
      '.hidden/x.yaml': '[',
      '.x.yaml': '[',
      'a/b/c/d.yml': question('').replace(/^/, '# deep\n'),
      'picture.png': '<svg/>',
    };
    const { pack, findings } = await readPackFolder(await goodPackWith(more));
    expect([pack?.questions.map(({ id }) => id), findings]).toEqual([['LA-02-009', 'LA-02-001'], []]);
  });

  it('may not go four folders deep', async () => {
    expect(await found({ 'a/b/c/d/e.yaml': '[' })).toEqual(['a/b/c/d:1:1 folder-depth']);
  });

  it('may not hold links, whatever they lead to', async () => {
    const folder = await goodPackWith({});
    await symlink('/etc/passwd', join(folder, 'x.yaml'));
    await symlink(folder, join(folder, 'round'));
    const { pack, findings } = await readPackFolder(folder);
    expect([pack, findings.map(short)]).toEqual([null, ['round:1:1 folder-link', 'x.yaml:1:1 folder-link']]);
    expect(JSON.stringify(findings)).not.toContain('root:');
  });

  it('may not hold a file over 2 MB, nor 20 MB of YAML, nor 501 files', async () => {
    const large = new Uint8Array(2_000_001).fill(0x23);
    expect(await found({ 'x.yaml': large })).toEqual(['x.yaml:1:1 file-size']);
    const eleven = Array.from({ length: 11 }, (_, number): [string, Uint8Array] => [`${number}.yaml`, large.subarray(0, 1_950_000)]);
    expect(await found(Object.fromEntries(eleven))).toContain('9.yaml:1:1 folder-size');
    const many = Array.from({ length: 501 }, (_, number): [string, string] => [`${number}.txt`, '']);
    const { findings } = await readPackFolder(await folderOf(Object.fromEntries(many)));
    expect(findings.map(short)).toEqual(['.:1:1 folder-entries']);
  });

  it('is named when it is not there, or is a file', async () => {
    const folder = await folderOf({ 'x.yaml': '' });
    for (const [name, word] of [
      ['nowhere', 'no such folder'],
      ['x.yaml', 'not a folder'],
      ['x.yaml/y', 'no such folder'],
    ] as const) {
      const { findings, pack } = await readPackFolder(join(folder, name));
      expect([pack, findings.map(short)]).toEqual([null, ['.:1:1 no-folder']]);
      expect(findings[0]?.message).toContain(word);
    }
  });

  it('may have a folder whose name ends like a file', async () => {
    const folder = await goodPackWith({});
    await mkdir(join(folder, 'x.yaml'));
    expect((await readPackFolder(folder)).findings).toEqual([]);
  });

  it('shows names of files without what a terminal would act on', async () => {
    const { findings } = await readPackFolder(await folderOf({ 'a\u001b[31m\n.yaml': '[' }));
    expect(findings[0]?.file).toBe('a<U+001B>[31m⏎.yaml');
  });
});

describe('the files of a pack', () => {
  it.each([
    ['two kinds in one file', { 'x.yaml': 'topics: []\nsources: []\n' }, ['x.yaml:2:1 several-kinds sources']],
    ['the pack described twice', { 'z.yaml': head }, ['z.yaml:1:1 two-heads pack']],
    ['a list that is not written', { 'x.yaml': 'topics:\n' }, ['x.yaml:1:1 wrong-type topics']],
    ['a text where a list belongs', { 'x.yaml': 'topics: none\n' }, ['x.yaml:1:9 wrong-type topics']],
    [
      'a mapping where a text belongs',
      { 'cautions.yaml': 'cautions:\n  - id: height\n    sign: general\n    text: { a: 1 }\n' },
      ['cautions.yaml:4:11 wrong-type cautions[0].text'],
    ],
    [
      'nothing where a text belongs',
      { 'cautions.yaml': 'cautions:\n  - id: height\n    sign: general\n    text:\n' },
      ['cautions.yaml:4:5 wrong-type cautions[0].text'],
    ],
    [
      'an empty text',
      { 'cautions.yaml': 'cautions:\n  - id: height\n    sign: general\n    text: " "\n' },
      ['cautions.yaml:4:11 too-small cautions[0].text'],
    ],
    [
      'a text too long',
      { 'cautions.yaml': `cautions:\n  - id: height\n    sign: general\n    text: ${'x'.repeat(601)}\n` },
      ['cautions.yaml:4:11 too-big cautions[0].text'],
    ],
    [
      'a number in quote marks',
      { 'q.yaml': question('').replace('revision: 1', 'revision: "1"') },
      ['q.yaml:3:15 wrong-type questions[0].revision'],
    ],
    ['half a number', { 'q.yaml': question('').replace('revision: 1', 'revision: 1.5') }, ['q.yaml:3:15 wrong-type questions[0].revision']],
    [
      'endless numbers',
      { 'q.yaml': question('').replace('revision: 1', 'revision: .inf') },
      ['q.yaml:3:15 wrong-type questions[0].revision'],
    ],
    [
      'key: false',
      { 'q.yaml': question('').replace('why: Reason. }', 'why: Reason., key: false }') },
      ['q.yaml:10:41 wrong-value questions[0].options[1].key'],
    ],
    ['an unknown region', { 'q.yaml': question('    regions: [uk, us]\n') }, ['q.yaml:16:19 wrong-value questions[0].regions[1]']],
  ])('are told to have %s', async (_what, files: Files, expected) => {
    expect(await found(files, 'error')).toEqual(expected);
  });

  it('tell allowed numbers as they tell allowed words', async () => {
    const { findings } = await readPackFolder(await goodPackWith({ 'o.yaml': objective.replace('weight: 3', 'weight: 4') }));
    expect(findings.map(short)).toContain('o.yaml:7:13 wrong-value objectives[0].weight');
    expect(findings.find(({ rule }) => rule === 'wrong-value')?.message).toContain('Allowed: 1, 2, 3.');
  });

  it('tell what a comma does to a text in braces', async () => {
    const { findings } = await readPackFolder(await goodPackWith({ 'q.yaml': question('').replace('text: Two', 'text: Two, not one') }));
    expect(findings.map(short)).toEqual(['q.yaml:10:22 unknown-key questions[0].options[1].not one']);
    expect(findings[0]?.message).toContain('put the whole text in quote marks');
  });

  it('tell a head that is not in pack.yaml', async () => {
    const { pack, findings } = await readPackFolder(await folderOf({ 'about.yaml': 'pack:\n  id: x\n' }));
    expect(pack).toBeNull();
    expect(findings.map(short)).toContain('about.yaml:1:1 head-elsewhere pack');
    expect(findings.filter(({ rule }) => rule === 'missing-key')).toHaveLength(7);
  });

  it('say nothing of what is missing while one of them cannot be read', async () => {
    expect(await found({ 'sources.yaml': 'sources:\n\t- x\n' })).toEqual(['sources.yaml:2:1 yaml-syntax']);
  });

  it('hide no text that they quote, and cut it at 80 letters', async () => {
    const long = `<b>${'x'.repeat(300)}`;
    const { findings } = await readPackFolder(await goodPackWith({ 'q.yaml': question('').replace('recall', `"${long}"`) }));
    expect(findings[0]?.message).toContain(`"<b>${'x'.repeat(76)}…"`);
  });

  it('say nothing more of a text in which a character was refused', async () => {
    expect(await found({ 'q.yaml': question('').replace('recall', '"re\\0call"') })).toEqual([
      'q.yaml:6:13 text-character questions[0].demand',
    ]);
  });

  it('take the likelier of two forms of an input, and tell its faults', async () => {
    const family = (input: string): Files => ({ 'f.yaml': `families:\n  - id: nf-x\n    inputs:\n      P: ${input}\n` });
    expect(await found(family('{ label: a, unit: W, min: 1, max: 2, stop: 1 }'))).toEqual(
      expect.arrayContaining(['f.yaml:4:10 missing-key families[0].inputs.P.step', 'f.yaml:4:47 unknown-key families[0].inputs.P.stop']),
    );
    expect(await found(family('{ label: a, unit: W, min: 1, max: 2, step: 0 }'))).toContain(
      'f.yaml:4:53 not-consistent families[0].inputs.P.step',
    );
    expect(await found(family('5'))).toContain('f.yaml:4:10 wrong-type families[0].inputs.P');
    expect(await found({ 'f.yaml': 'families:\n  - inputs:\n      p: 5\n' })).toContain('f.yaml:3:7 wrong-format families[0].inputs.p');
  });
});

const objective = `objectives:
  - code: LA-03
    topic: LA
    title: Second
    mustKnow: It.
    why: Because.
    weight: 3
    facts: [{ text: A fact., source: ladder-leaflet, basis: read }]
    misconceptions: []
`;

describe('the checks across files', () => {
  it.each([
    ['one id in two files', { 'q.yaml': question('').replace('-009', '-001') }, ['questions/la.yaml:2:9 duplicate-id questions[0].id']],
    [
      'one code twice in a file',
      { 'o.yaml': `${objective}${objective.replace('objectives:\n', '')}` },
      [
        'o.yaml:2:11 objective-unasked objectives[0].code',
        'o.yaml:10:11 duplicate-id objectives[1].code',
        'o.yaml:10:11 objective-unasked objectives[1].code',
      ],
    ],
    [
      'a source that is not there',
      { 'q.yaml': question('').replace('[ladder-leaflet]', '[ladder-leaflet, other]') },
      ['q.yaml:13:31 missing-reference questions[0].sources[1]'],
    ],
    [
      'an objective of no topic',
      { 'o.yaml': objective.replace('topic: LA', 'topic: LB') },
      [
        'o.yaml:2:11 objective-unasked objectives[0].code',
        'o.yaml:2:11 wrong-prefix objectives[0].code',
        'o.yaml:3:12 missing-reference objectives[0].topic',
      ],
    ],
    [
      'a fact of no source',
      { 'o.yaml': objective.replace('source: ladder-leaflet', 'source: none') },
      ['o.yaml:2:11 objective-unasked objectives[0].code', 'o.yaml:8:38 missing-reference objectives[0].facts[0].source'],
    ],
    [
      'a question with another objective than its id says',
      { 'q.yaml': question('').replace('id: LA-02', 'id: LA-07') },
      ['q.yaml:2:9 wrong-prefix questions[0].id'],
    ],
    [
      'a question from memory',
      { 'q.yaml': question('').replace('[ladder-leaflet]', '[hearsay]') },
      ['q.yaml:13:14 memory-only questions[0].sources'],
    ],
    ['an objective nobody asks about', { 'o.yaml': objective }, ['o.yaml:2:11 objective-unasked objectives[0].code']],
    [
      'a topic without objectives',
      { 't.yaml': 'topics:\n  - { code: LB, title: Other, blurb: None. }\n' },
      ['t.yaml:2:13 topic-empty topics[0].code'],
    ],
    [
      'a question without the caution of its objective',
      { 'q.yaml': question('').replace('    caution: height\n', '') },
      ['q.yaml:2:9 caution-missing questions[0].id'],
    ],
    [
      'two options that say the same',
      { 'q.yaml': question('').replace('Three', 'two.') },
      ['q.yaml:11:17 same-option questions[0].options[2].text'],
    ],
    [
      'a key that is far the longest',
      {
        'q.yaml': question('')
          .replace('One', 'The rope at the very bottom end')
          .replace('Two', 'Two bricks or so')
          .replace('Three', 'Three heavy bags'),
      },
      ['q.yaml:9:17 longest-key questions[0].options[0].text'],
    ],
    [
      'an option that catches all',
      { 'q.yaml': question('').replace('Three', 'None of the above') },
      ['q.yaml:11:17 catch-all-option questions[0].options[2].text'],
    ],
  ])('tell of %s', async (_what, files: Files, expected) => {
    expect(await found(files)).toEqual(expected);
  });

  it('name the place where a doubled id was used first', async () => {
    const { findings } = await readPackFolder(await goodPackWith({ 'q.yaml': question('').replace('-009', '-001') }));
    expect(findings[0]?.message).toContain('The first is in q.yaml, line 2.');
  });

  it('tell what is wrong in a family at its place in the file', async () => {
    const folder = await goodPackWith({});
    const text = await readFile(join(folder, 'families.yaml'), 'utf8');
    const { findings, pack } = await readPackFolder(await goodPackWith({ 'families.yaml': text.replace('expr: H / 4', 'expr: H / Q') }));
    expect(pack).toBeNull();
    expect(findings.map(short)).toEqual(['families.yaml:13:13 family families[0].answer.expr']);
  });

  it('leave families alone when asked to', async () => {
    const folder = await goodPackWith({});
    const text = await readFile(join(folder, 'families.yaml'), 'utf8');
    const broken = await goodPackWith({ 'families.yaml': text.replace('expr: H / 4', 'expr: H / Q') });
    expect((await readPackFolder(broken, { tryFamilies: false })).findings).toEqual([]);
  });

  it('tell of a list that is too long over all files', async () => {
    const cautions = Array.from({ length: 60 }, (_, number) => `  - { id: c${number}, sign: general, text: Mind. }\n`).join('');
    expect(await found({ 'x.yaml': `cautions:\n${cautions}` })).toEqual(['x.yaml:61:5 too-many-entries cautions[59]']);
  });
});
