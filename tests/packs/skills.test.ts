import { randomUUID } from 'node:crypto';
import { mkdir, mkdtemp, readFile, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { starterFiles } from '../../src/cli/new-pack-files.js';
import { readingGrade } from '../../src/core/lint/pack-wide.js';
import type { Pack } from '../../src/core/pack.js';
import { packsService } from '../../src/packs/index.js';
import { readPackFolder } from '../../src/packs/read-folder.js';
import { projectFolder } from '../../src/platform/project-folder.js';
import { questionsService } from '../../src/questions/index.js';
import { enrolAll } from '../../src/study/index.js';
import { testApp, type TestApp, type Visitor } from '../support/app.js';
import { packWithSkills, smallSkills } from '../support/small-skills.js';
import { staffOf } from '../support/staff.js';

/** Practical skills on their way from a pack's files to those who read them. */

let app: TestApp;
let tutor: Visitor;
beforeAll(async () => {
  app = await testApp();
  ({ tutor } = await staffOf(app));
});
afterAll(() => app.close());

const packs = () => packsService({ db: app.db, enrolAll });
const listed = () => questionsService({ db: app.db, clock: app.clock }).skills();

describe('the skills of a pack', () => {
  it('may be none: a pack without them is loaded, and lists nothing', async () => {
    expect(await listed()).toEqual([]);
  });

  it('are a change of the pack by themselves, and are told before anybody confirms', async () => {
    const plan = await packs().plan(packWithSkills());
    expect(plan).toMatchObject({ state: 'changes', added: [], changed: [] });
    expect(plan.around).toEqual([{ label: 'Skills that change', codes: ['lead', 'plug', 'panel'] }]);
    expect((await packs().load(packWithSkills())).state).toBe('changes');
    expect((await packs().load(packWithSkills())).state).toBe('unchanged');
    const reworded = structuredClone(smallSkills);
    if (reworded[0]?.criteria[0]) reworded[0].criteria[0].text = 'Unplugs both ends.';
    expect((await packs().plan(packWithSkills(reworded))).around).toEqual([{ label: 'Skills that change', codes: ['lead'] }]);
  });

  it('are listed in the pack’s order, with title of the pack, caution, objectives and short names of sources', async () => {
    const rows = await listed();
    expect(rows.map(({ pack, packTitle, skill }) => [pack, packTitle, skill.id])).toEqual([
      ['small', 'Small pack', 'lead'],
      ['small', 'Small pack', 'plug'],
      ['small', 'Small pack', 'panel'],
    ]);
    expect(rows[0]).toMatchObject({
      skill: smallSkills[0],
      caution: { id: 'mains', sign: 'electric', text: 'Leave fixed wiring to an electrician.' },
      objectives: [{ code: 'AA-01', title: 'Objective AA-01' }],
      sources: 'Book',
    });
  });

  it('are kept a minute, and read anew after a pack was loaded here', async () => {
    const questions = questionsService({ db: app.db, clock: app.clock });
    expect(await questions.skills()).toHaveLength(3);
    await packs().load(packWithSkills(smallSkills.slice(0, 1)));
    expect(await questions.skills()).toHaveLength(3);
    questions.forget();
    expect(await questions.skills()).toHaveLength(1);
  });

  it('are none in a pack that was sent before packs had any, and waits', async () => {
    const { skills: _, ...before } = packWithSkills([]);
    const pack: Omit<Pack, 'skills'> = { ...before, head: { ...before.head, id: 'earlier', title: 'Sent before' } };
    const id = randomUUID();
    await app.rows(
      `INSERT INTO pack_upload (id, person_id, file_name, report, pack, uploaded_at)
       SELECT $1, id, 'earlier.zip', $2, $3, $4 FROM person WHERE display_name = 'Tessa'`,
      [
        id,
        JSON.stringify({ findings: [], head: { id: 'earlier', version: '1.0.0' }, coverage: [] }),
        JSON.stringify(pack),
        app.clock.now(),
      ],
    );
    const page = await tutor.get(`/packs/uploads/${id}`);
    expect((await tutor.submit(page, `/packs/uploads/${id}/add`)).status).toBe(303);
    expect(await app.rows("SELECT skills FROM pack WHERE slug = 'earlier'")).toEqual([{ skills: [] }]);
  });
});

describe('skills in a folder', () => {
  it('are read from their file, and a fault in one is told with its place', async () => {
    const folder = await mkdtemp(join(tmpdir(), 'rungwise-skills-'));
    try {
      for (const [name, text] of Object.entries(await starterFiles('hut'))) {
        await mkdir(dirname(join(folder, name)), { recursive: true });
        await writeFile(join(folder, name), text);
      }
      const { pack } = await readPackFolder(folder, { tryFamilies: false });
      expect(pack?.skills.map(({ id }) => id)).toEqual(['load-the-lead']);
      const text = await readFile(join(folder, 'skills.yaml'), 'utf8');
      await writeFile(join(folder, 'skills.yaml'), text.replace('caution: leads', 'caution: leds'));
      const { findings } = await readPackFolder(folder, { tryFamilies: false });
      const line = text.split('\n').findIndex((each) => each.includes('caution: leads')) + 1;
      expect(findings.map(({ file, line: at, rule, message }) => [file, at, rule, message])).toEqual([
        ['skills.yaml', line, 'missing-reference', 'This pack has no caution "leds". Did you mean "leads"?'],
      ]);
      await rm(join(folder, 'skills.yaml'));
      expect((await readPackFolder(folder, { tryFamilies: false })).pack?.skills).toEqual([]);
    } finally {
      await rm(folder, { recursive: true, force: true });
    }
  });
});

describe('the skills of Entry safety', async () => {
  const { pack } = await readPackFolder(join(projectFolder, 'question-packs', 'entry-safety'), { tryFamilies: false });
  const { skills = [], objectives = [] } = pack ?? {};

  it('are there, with what ends each of them', () => {
    expect(skills).toHaveLength(14);
    expect(skills.filter(({ stop }) => stop === undefined)).toEqual([]);
  });

  it('keep British plugs to the United Kingdom', () => {
    const british = skills.filter((skill) => /BS 136[23]/.test(JSON.stringify(skill)));
    expect(british.map(({ id, regions }) => [id, regions])).toEqual([
      ['wire-a-plug', ['uk']],
      ['choose-a-plug-fuse', ['uk']],
    ]);
  });

  /** Earths and driving cannot be shown safely at a meeting, and the others are for questions: nothing is done by hand. */
  const notShown = ['EA-01', 'EA-02', 'EA-03', 'EA-04', 'OU-02', 'RF-01', 'RF-06', 'SH-01'];
  it('cover every core objective that can be shown safely', () => {
    const covered = new Set(skills.flatMap((skill) => skill.objectives));
    const core = objectives.filter(({ weight }) => weight === 3).map(({ code }) => code);
    expect(core.filter((code) => !covered.has(code)).sort()).toEqual(notShown);
  });

  it('read easily: grade 8 of Flesch and Kincaid at most, each of them', () => {
    const grades = skills.map((skill) => {
      const texts = [...skill.brings, ...skill.showing, skill.stop ?? '', ...skill.criteria.flatMap(({ text, why }) => [text, why])];
      return [skill.id, readingGrade(texts)] as const;
    });
    expect(grades.filter(([, grade]) => grade === null || grade > 8)).toEqual([]);
  });
});
