import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import type { Pack } from '../../src/core/pack.js';
import { packsService } from '../../src/packs/index.js';
import { enrolAll } from '../../src/study/index.js';
import { testApp, type TestApp } from '../support/app.js';
import { answer, isNumber, rightFields, tokenOf, untilQuestion } from '../support/answering.js';
import { smallPack } from '../support/small-pack.js';

/** What a new version of a pack does to the bank and to what people remember. */

let app: TestApp;
beforeEach(async () => {
  app = await testApp();
});
afterEach(() => app.close());

const service = () => packsService({ db: app.db, enrolAll });
function next(change: (pack: Pack) => void): Pack {
  const pack = structuredClone(smallPack());
  pack.head.version = '1.1.0';
  change(pack);
  return pack;
}
const first = (pack: Pack) => pack.questions[0] as Pack['questions'][number];

/** Somebody answers the first question of the pack rightly. @returns its memory, read by the test itself */
async function remembered(): Promise<() => Promise<{ stability: number | null; reps: number } | undefined>> {
  const visitor = app.visitor();
  await visitor.start('Odo');
  const page = await untilQuestion(
    visitor,
    await visitor.round('20'),
    (shown) => !isNumber(shown) && shown.words.includes('Stem of AA-01-001'),
  );
  await answer(visitor, page, rightFields(page));
  const token = tokenOf(page);
  return async () =>
    (
      await app.rows<{ stability: number | null; reps: number }>(
        'SELECT m.stability, m.reps FROM memory m JOIN answer a USING (person_id, question_id) WHERE a.token = $1',
        [token],
      )
    )[0];
}

describe('a new version of a pack', () => {
  it('is planned without changing anything', async () => {
    const pack = next((each) => {
      first(each).revision = 2;
      first(each).stem = 'Asked otherwise?';
      each.questions.splice(1, 1);
      each.questions.push({ ...structuredClone(first(each)), id: 'AA-01-002', revision: 1 });
    });
    expect(await service().plan(pack)).toMatchObject({
      state: 'changes',
      before: '1.0.0',
      version: '1.1.0',
      added: ['AA-01-002'],
      changed: [{ code: 'AA-01-001', from: 1, to: 2, keeps: false }],
      retired: ['AA-02-001'],
      around: [],
      step: 'newer',
      refused: [],
    });
    expect(await app.rows('SELECT version FROM pack')).toEqual([{ version: '1.0.0' }]);
  });

  it('starts people afresh with a question that changed', async () => {
    const memory = await remembered();
    expect((await memory())?.stability).toBeGreaterThan(0);
    await service().load(
      next((pack) => {
        first(pack).revision = 2;
        first(pack).stem = 'Something else?';
      }),
    );
    expect(await memory()).toEqual({ stability: null, reps: 1 });
  });

  it('keeps what people remember where the author says that the question is the same', async () => {
    const memory = await remembered();
    const before = await memory();
    await service().load(
      next((pack) => {
        first(pack).revision = 3;
        first(pack).sameSince = 1;
        first(pack).stem = 'Stem of AA-01-001, spelt better?';
      }),
    );
    expect(await memory()).toEqual(before);
  });

  it('starts afresh where it is the same only since a revision that nobody here has met', async () => {
    const memory = await remembered();
    await service().load(
      next((pack) => {
        first(pack).revision = 3;
        first(pack).sameSince = 2;
        first(pack).stem = 'Something else, spelt better?';
      }),
    );
    expect((await memory())?.stability).toBeNull();
  });

  it('takes a retired question out of rounds and keeps its history, and brings it back', async () => {
    const memory = await remembered();
    const before = await memory();
    const gone = next((pack) => void pack.questions.splice(0, 1));
    await service().load(gone);
    expect(await app.rows("SELECT retired FROM question WHERE code = 'AA-01-001'")).toEqual([{ retired: true }]);
    expect(await memory()).toEqual(before);
    const back = next((pack) => void (pack.head.version = '1.2.0'));
    expect(await service().plan(back)).toMatchObject({ returned: ['AA-01-001'], added: [], retired: [] });
    await service().load(back);
    expect(await app.rows("SELECT retired FROM question WHERE code = 'AA-01-001'")).toEqual([{ retired: false }]);
  });

  it.each<[string, (pack: Pack) => void, string]>([
    ['a text that changed under the same revision', (pack) => void (first(pack).stem = 'Other?'), 'same-revision'],
    [
      'a kind that changed though it is said to ask the same',
      (pack) => {
        const { options: _, ...rest } = first(pack) as never as Record<string, unknown>;
        const statements = [
          { text: 'One', holds: true },
          { text: 'Two', holds: false, why: 'No.' },
          { text: 'Three', holds: false, why: 'No.' },
        ];
        pack.questions[0] = { ...rest, kind: 'several', statements, revision: 2, sameSince: 1 } as never;
      },
      'other-kind',
    ],
  ])('is refused whole for %s', async (_what, change, why) => {
    const pack = next((each) => {
      each.questions.splice(2, 1);
      change(each);
    });
    expect(await service().load(pack)).toMatchObject({ state: 'refused', refused: [{ code: 'AA-01-001', why }] });
    expect(await app.rows('SELECT version FROM pack')).toEqual([{ version: '1.0.0' }]);
    expect(await app.rows('SELECT count(*)::int AS n FROM question WHERE retired')).toEqual([{ n: 0 }]);
  });

  it('may change the day of the check, the excuses and the order of its files under the same revision', async () => {
    const pack = next((each) => {
      first(each).checked = '2026-12-01';
      first(each).excuses = [{ rule: 'long-stem', reason: 'It is needed.' }];
      each.questions.reverse();
    });
    expect(await service().load(pack)).toMatchObject({ state: 'changes', changed: [], refused: [] });
  });

  it('is nothing new the second time', async () => {
    const pack = next((each) => void (first(each).revision = 2));
    await service().load(pack);
    expect(await service().load(pack)).toMatchObject({ state: 'unchanged' });
    expect(await service().plan(pack)).toMatchObject({ state: 'unchanged' });
  });
});

describe('two packs', () => {
  it('may use the same codes, and are both studied', async () => {
    const other = next((pack) => {
      pack.head.id = 'other';
      pack.head.title = 'Other pack';
    });
    expect(await service().load(other, 'added')).toMatchObject({ state: 'new', before: null });
    expect(await app.rows("SELECT count(*)::int AS n FROM question WHERE code = 'AA-01-001'")).toEqual([{ n: 2 }]);
    const visitor = app.visitor();
    await visitor.start('Odo');
    const rows = await app.rows<{ n: number }>(
      'SELECT count(DISTINCT q.pack_id)::int AS n FROM memory m JOIN question q ON q.id = m.question_id',
    );
    expect(rows).toEqual([{ n: 2 }]);
  });
});
