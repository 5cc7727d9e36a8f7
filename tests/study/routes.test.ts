import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { Visitor, testApp, type TestApp } from '../support/app.js';
import { answer, cameBack, isNumber, rightFields, stemOf, tokenOf, untilQuestion, wrongFields } from '../support/answering.js';

let app: TestApp;
beforeAll(async () => {
  app = await testApp();
});
afterAll(() => app.close());

async function candidate(name = 'Odo'): Promise<Visitor> {
  const visitor = app.visitor();
  await visitor.start(name);
  return visitor;
}
const countAnswers = async (): Promise<number> => (await app.rows<{ n: number }>('SELECT count(*)::int AS n FROM answer'))[0]?.n ?? -1;
const answerRow = async (token: string) => (await app.rows<Record<string, unknown>>('SELECT * FROM answer WHERE token = $1', [token]))[0];

describe('the first evening', () => {
  it('leads from the first page to a question, its outcome, and the next question', async () => {
    const visitor = await candidate();
    const question = await visitor.get(await visitor.round());
    expect(question.status).toBe(200);
    expect(question.html.querySelectorAll('button[name=certainty]').map((button) => button.getAttribute('value'))).toEqual([
      'sure',
      'fairly',
      'guessing',
    ]);
    const outcome = await answer(visitor, question, rightFields(question));
    expect(outcome.html.querySelector('h1')?.text).toContain('Right.');
    const next = outcome.html.querySelector('a.go')?.getAttribute('href');
    expect(stemOf(await visitor.get(next ?? ''))).not.toBe(stemOf(question));
  });

  it('says nothing of the key before the answer, and why after it', async () => {
    const visitor = await candidate();
    const question = await untilQuestion(visitor, await visitor.round(), (page) => page.text.includes('Stem of'));
    for (const secret of ['First reason', 'Second reason', 'Explanation of']) expect(question.text).not.toContain(secret);
    const outcome = await answer(visitor, question, wrongFields(question), 'fairly');
    expect(outcome.html.querySelector('h1')?.text).toContain('Not right.');
    for (const told of ['First reason.', 'Explanation of', 'were fairly sure', 'Stop and ask a competent person.'])
      expect(outcome.words).toContain(told);
  });

  it('keeps the caution that names the safe act for after the answer, where it would give a fixed question away', async () => {
    const visitor = await candidate();
    const question = await untilQuestion(visitor, await visitor.round('20'), (page) => page.text.includes('Stem of CC-01'));
    expect(question.words).toContain('Stop and ask a competent person.');
    expect(question.words).not.toContain('Keep well back');
    expect((await answer(visitor, question, rightFields(question))).words).toContain('Keep well back');
  });

  it('ends with what was asked and when it comes back', async () => {
    const visitor = await candidate();
    const round = await visitor.round('0');
    const question = await visitor.get(round);
    const fields = isNumber(question) ? rightFields(question) : wrongFields(question);
    await answer(visitor, question, fields);
    const end = await visitor.get((await visitor.get(round)).location ?? '');
    expect(end.html.querySelectorAll('tbody tr')).toHaveLength(1);
    expect(end.text).toMatch(/tomorrow|in 2 days/);
  });
});

describe('an answer that lacks something', () => {
  it('comes back with what was chosen and stores nothing when no certainty was said', async () => {
    const visitor = await candidate();
    const question = await untilQuestion(visitor, await visitor.round(), (page) => !isNumber(page));
    const before = await countAnswers();
    const chosen = rightFields(question);
    const again = await cameBack(visitor, await visitor.submit(question, '/study/answer', chosen));
    expect(again.text).toContain('Say how sure you are');
    expect(again.html.querySelector('input[name=option][checked]')?.getAttribute('value')).toBe(chosen['option']);
    expect(tokenOf(again)).toBe(tokenOf(question));
    expect(await countAnswers()).toBe(before);
  });

  it('comes back when no option was chosen, or one that is not offered', async () => {
    const visitor = await candidate();
    const question = await untilQuestion(visitor, await visitor.round(), (page) => !isNumber(page));
    for (const fields of [{}, { option: '99' }, { option: '__proto__' }]) {
      const again = await cameBack(visitor, await visitor.submit(question, '/study/answer', { ...fields, certainty: 'sure' }));
      expect(again.text).toContain('Choose one of the answers first');
    }
    expect(await answerRow(tokenOf(question))).toBeUndefined();
  });

  it.each(['', 'a lot', '1,234', '5 m', '10 to 20 W', '<script>alert(1)</script>'])(
    'comes back with the typed text %j and says why',
    async (typed) => {
      const visitor = await candidate();
      const question = await untilQuestion(visitor, await visitor.round(), isNumber);
      const again = await cameBack(visitor, await visitor.submit(question, '/study/answer', { value: typed, certainty: 'sure' }));
      const box = again.html.querySelector('input[name=value]');
      expect(box?.getAttribute('value')).toBe(typed);
      expect(box?.getAttribute('aria-invalid')).toBe('true');
      expect(again.text).not.toContain('<script>alert');
      expect(await answerRow(tokenOf(question))).toBeUndefined();
    },
  );
});

describe('an answer sent more than once', () => {
  it('counts once, also when pressed twenty times at the same moment', async () => {
    const visitor = await candidate();
    const question = await untilQuestion(visitor, await visitor.round(), (page) => !isNumber(page));
    const fields = { ...rightFields(question), certainty: 'sure' };
    const sent = await Promise.all(Array.from({ length: 20 }, () => visitor.submit(question, '/study/answer', fields)));
    expect(new Set(sent.map(({ status }) => status))).toEqual(new Set([303]));
    expect(new Set(sent.map(({ location }) => location)).size).toBe(1);
    const rows = await app.rows<{ reps: number }>(
      'SELECT m.reps FROM memory m JOIN answer a USING (person_id, question_id) WHERE a.token = $1',
      [tokenOf(question)],
    );
    expect(rows).toEqual([{ reps: 1 }]);
  });

  it('keeps the first when the second says something else', async () => {
    const visitor = await candidate();
    const question = await untilQuestion(visitor, await visitor.round(), (page) => !isNumber(page));
    await answer(visitor, question, wrongFields(question), 'guessing');
    const outcome = await answer(visitor, question, rightFields(question), 'sure');
    expect(outcome.html.querySelector('h1')?.text).toContain('Not right.');
    expect((await answerRow(tokenOf(question)))?.['right']).toBe(false);
  });

  it('a round started twice with the same form is one round', async () => {
    const visitor = await candidate();
    const now = await visitor.get('/');
    const [first, second] = [
      await visitor.submit(now, '/study/rounds', { minutes: '5' }),
      await visitor.submit(now, '/study/rounds', { minutes: '5' }),
    ];
    expect(first.location).toBe(second.location);
    const id = first.location?.split('/').at(-1);
    const rows = await app.rows<{ n: number; d: number }>(
      'SELECT count(*)::int AS n, count(DISTINCT question_id)::int AS d FROM round_item WHERE round_id = $1',
      [id],
    );
    expect(rows[0]?.n).toBe(rows[0]?.d);
  });
});

describe('a typed number', () => {
  it('that is wrong brings fresh numbers before any help; right then counts as recalled with doubt', async () => {
    const visitor = await candidate();
    const round = await visitor.round('20');
    const question = await untilQuestion(visitor, round, isNumber);
    const outcome = await answer(visitor, question, wrongFields(question), 'fairly');
    expect(outcome.words).toContain('fresh numbers');
    for (const help of ['Power is voltage times current', 'Used 120 V', 'Put the numbers in']) expect(outcome.words).not.toContain(help);
    expect((await answerRow(tokenOf(question)))?.['rating']).toBeNull();

    const fresh = await visitor.get(round);
    expect(isNumber(fresh)).toBe(true);
    expect(tokenOf(fresh)).not.toBe(tokenOf(question));
    const after = await answer(visitor, fresh, rightFields(fresh), 'sure');
    expect(after.html.querySelector('h1')?.text).toContain('Right.');
    expect((await answerRow(tokenOf(fresh)))?.['rating']).toBe(2);
    expect(after.words).toContain('Power is voltage times current');
    // Now that the second is answered, the page of the first tells all as well.
    expect((await visitor.get(`/study/answers/${tokenOf(question)}`)).words).toContain('Used 120 V');
  });

  it('that is wrong twice is forgotten, and the mistake is named with its danger', async () => {
    const visitor = await candidate();
    const round = await visitor.round('20');
    const question = await untilQuestion(visitor, round, isNumber);
    await answer(visitor, question, wrongFields(question), 'sure');
    const fresh = await visitor.get(round);
    const outcome = await answer(visitor, fresh, wrongFields(fresh), 'sure');
    expect(outcome.html.querySelector('h1')?.text).toContain('Not right.');
    expect(outcome.words).toContain('Used 120 V');
    expect(outcome.html.querySelector('math')).not.toBeNull();
    const row = await answerRow(tokenOf(fresh));
    expect([row?.['rating'], row?.['tell_tale']]).toEqual([1, 'other-supply']);
    const [memory] = await app.rows<{ surely_wrong: boolean; due: number }>(
      'SELECT m.surely_wrong, m.due_day - m.last_day AS due FROM memory m JOIN answer a USING (person_id, question_id) WHERE a.token = $1',
      [tokenOf(fresh)],
    );
    expect(memory).toEqual({ surely_wrong: true, due: 1 });
  });

  it('is right in another unit and with a space, a comma or a prefix', async () => {
    for (const write of [(w: number) => `${w / 1000} kW`, (w: number) => `${w}`, (w: number) => ` ${w},0 watts `]) {
      const visitor = await candidate();
      const question = await untilQuestion(visitor, await visitor.round('20'), isNumber);
      const watts = Number(rightFields(question)['value']?.split(' ')[0]);
      const outcome = await answer(visitor, question, { value: write(watts) });
      expect(outcome.html.querySelector('h1')?.text).toContain('Right.');
    }
  });
});

describe('the next day', () => {
  it('brings back what is due, and a question due later stays away', async () => {
    const clock = app.clock;
    clock.set('2026-11-25T20:00:00Z');
    const visitor = await candidate('Tansy');
    const round = await visitor.round('20');
    const asked: string[] = [];
    for (let page = await visitor.get(round); page.status === 200; page = await visitor.get(round)) {
      if (!isNumber(page)) asked.push(stemOf(page));
      // All right and sure but one, which is wrong: that alone is due tomorrow; the others in two days.
      await answer(visitor, page, asked.length === 1 && !isNumber(page) ? wrongFields(page) : rightFields(page), 'sure');
    }
    expect(asked.length).toBeGreaterThan(5);
    expect((await visitor.get('/')).text).toContain('You have answered everything for today');

    clock.set('2026-11-26T07:00:00Z');
    const now = await visitor.get('/');
    expect(now.html.querySelector('h1')?.text).toBe('One question has come back');
    const next = await visitor.get(await visitor.round('0'));
    expect(stemOf(next)).toBe(asked[0]);

    clock.set('2026-11-27T07:00:00Z');
    expect((await visitor.get('/')).html.querySelector('h1')?.text).toMatch(/questions have come back/);
    clock.set('2026-11-25T18:00:00Z');
  });

  it('begins at the candidate’s own midnight', async () => {
    // 12:00 UTC on 25 November is 01:00 on the 26th in Auckland (UTC+13 in summer).
    app.clock.set('2026-11-25T12:00:00Z');
    const visitor = app.visitor();
    await visitor.start('Moa', { timeZone: 'Pacific/Auckland' });
    const question = await untilQuestion(visitor, await visitor.round(), (page) => !isNumber(page));
    await answer(visitor, question, rightFields(question));
    const [row] = await app.rows<{ day: number }>('SELECT day FROM answer WHERE token = $1', [tokenOf(question)]);
    expect(row?.day).toBe(Date.UTC(2026, 10, 26) / 86_400_000);
    app.clock.set('2026-11-25T18:00:00Z');
  });
});

describe('what is another’s', () => {
  it('answers exactly as what does not exist, for reading and for writing', async () => {
    const [owner, stranger] = [await candidate('Owner'), await candidate('Stranger')];
    const round = await owner.round();
    const question = await owner.get(round);
    const outcome = await owner.submit(question, '/study/answer', { ...rightFields(question), certainty: 'sure' });
    const nowhere = '00000000-0000-4000-8000-000000000000';
    const theirs = await stranger.get(round);
    const nothing = await stranger.get(`/study/rounds/${nowhere}`);
    expect([theirs.status, theirs.text]).toEqual([nothing.status, nothing.text]);
    expect(theirs.status).toBe(404);
    expect((await stranger.get(outcome.location ?? '')).text).toBe((await stranger.get(`/study/answers/${nowhere}`)).text);

    const second = await owner.get(round);
    const own = await stranger.get(await stranger.round());
    const before = await countAnswers();
    const sent = await stranger.submit(own, '/study/answer', { token: tokenOf(second), option: '0', value: '1', certainty: 'sure' });
    expect(sent.status).toBe(404);
    expect(await countAnswers()).toBe(before);
  });
});

describe('two servers on one database', () => {
  it('know the same sessions, rounds and answers', async () => {
    const visitor = await candidate();
    const round = await visitor.round();
    const question = await untilQuestion(visitor, round, (page) => !isNumber(page));
    const other = new Visitor(await app.another());
    for (const [name, value] of visitor.cookies) other.cookies.set(name, value);
    expect(stemOf(await other.get(round))).toBe(stemOf(question));
    const fields = { ...rightFields(question), certainty: 'sure' };
    const sent = await Promise.all([visitor.submit(question, '/study/answer', fields), other.submit(question, '/study/answer', fields)]);
    expect(sent.map(({ status }) => status)).toEqual([303, 303]);
    const [row] = await app.rows<{ reps: number }>('SELECT reps_after AS reps FROM answer WHERE token = $1', [tokenOf(question)]);
    expect(row?.reps).toBe(1);
  });
});

describe('a number that is not known', () => {
  it('can be handed in as not known: the working is shown at once, and the question comes back', async () => {
    const visitor = await candidate();
    const question = await untilQuestion(visitor, await visitor.round(), isNumber);
    const outcome = await answer(visitor, question, { value: '' }, 'unknown');
    expect(outcome.words).toContain('You said that you do not know it.');
    expect(outcome.html.querySelector('h1')?.text).toContain('The answer is');
    expect(outcome.words).toContain('Working');
    expect(outcome.words).not.toContain('Fresh numbers');
    expect(await answerRow(tokenOf(question))).toMatchObject({ right: false, rating: 1, given: '' });
  });

  it('is not known by a question with options: there a certainty is asked for', async () => {
    const visitor = await candidate();
    const question = await untilQuestion(visitor, await visitor.round(), (page) => !isNumber(page));
    const again = await cameBack(
      visitor,
      await visitor.submit(question, '/study/answer', { ...rightFields(question), certainty: 'unknown' }),
    );
    expect(again.text).toContain('Say how sure you are');
  });
});
