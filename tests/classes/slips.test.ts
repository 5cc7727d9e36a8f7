import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { readSlips, writeSlips } from '../../src/classes/slip-cookie.js';
import { phraseWords } from '../../src/core/return-phrase.js';
import { testApp, type TestApp, type Visitor } from '../support/app.js';
import { addNames, anotherTutor, joinWith, makeClass, makeJoinCode, onPeople, peopleOf, personLink, slipsOn } from '../support/people.js';
import { beginPaper, withBlueprint } from '../support/papers.js';
import { staffOf } from '../support/staff.js';

/** Slips on paper: accounts for candidates without a device, new phrases in place of lost ones, and how to join. */

let app: TestApp;
let tutor: Visitor;
let other: Visitor;
const lines: string[] = [];
beforeAll(async () => {
  app = await testApp({
    start: '2026-11-25T19:00:00Z',
    logger: { level: 'trace', stream: { write: (line: string) => void lines.push(line) } },
  });
  const { administrator, tutor: first } = await staffOf(app);
  tutor = first;
  other = await anotherTutor(app, administrator, 'Tobias', '10.0.0.7');
});
afterAll(() => app.close());

let addresses = 0;
const somebody = (): Visitor => app.visitor(`10.8.0.${(addresses += 1)}`);

/** Comes back with a phrase. @returns the browser, and whether it was let in */
async function comeBack(words: readonly string[] | undefined): Promise<{ visitor: Visitor; in: boolean }> {
  const visitor = somebody();
  const sent = await visitor.submit(await visitor.get('/return'), '/return', { phrase: (words ?? []).join(' ') });
  return { visitor, in: sent.location === '/' };
}

describe('candidates without a device', () => {
  it('get an account with something to study, and each a slip whose seven words bring them in', async () => {
    const id = await makeClass(tutor, 'Slips');
    const page = await onPeople(tutor, id, 'add', { names: 'Odo\nTansy\n\n Wilf ', region: 'na' });
    const slips = slipsOn(page);
    expect([...slips.keys()]).toEqual(['Odo', 'Tansy', 'Wilf']);
    expect(new Set([...slips.values()].map((words) => words.join(' '))).size).toBe(3);
    for (const [name, words] of slips) {
      expect(words).toHaveLength(7);
      expect(words.every((word) => phraseWords.includes(word))).toBe(true);
      const { visitor, in: isIn } = await comeBack(words);
      expect(isIn, name).toBe(true);
      expect((await visitor.get('/me')).html.querySelector('#name')?.getAttribute('value')).toBe(name);
      expect((await visitor.get('/my-classes')).words).toContain('Slips');
      expect((await visitor.get(await visitor.round('5'))).status).toBe(200);
    }
    expect(await app.rows(`SELECT DISTINCT region, time_zone, role FROM person WHERE display_name IN ('Odo', 'Tansy', 'Wilf')`)).toEqual([
      { region: 'na', time_zone: 'Europe/London', role: 'candidate' },
    ]);
  });

  it('up to thirty at once come on one page, whose cookie stays within what a browser keeps', async () => {
    const id = await makeClass(tutor, 'Thirty');
    const names = Array.from({ length: 30 }, (_, index) => `Candidate ${index + 1}`);
    const slips = slipsOn(await onPeople(tutor, id, 'add', { names: names.join('\n') }));
    expect([...slips.keys()]).toEqual(names);
    // Browsers keep cookies of 4,096 bytes, name and value together (RFC 6265, 6.1).
    expect('rungwise-slips='.length + (tutor.cookies.get('rungwise-slips') ?? '').length).toBeLessThan(4096);
    // Thirty of the longest words there are, and ids of nine digits.
    const long = [...phraseWords].sort((a, b) => b.length - a.length).slice(0, 7);
    const worst = Array.from({ length: 30 }, () => ({ personId: 999_999_999, words: long }));
    expect(encodeURIComponent(writeSlips(worst)).length).toBeLessThan(4000);
    expect(readSlips(writeSlips(worst))).toEqual(worst);
  });

  it('are made once when the form is sent twice, and the slips of the first time are still shown', async () => {
    const id = await makeClass(tutor, 'Twice');
    const page = await tutor.get(peopleOf(id));
    const send = () => tutor.submit(page, `${peopleOf(id)}/add`, { names: 'Barnaby\nCorin' });
    const sent = [...(await Promise.all([send(), send()])), await send()];
    expect(new Set(sent.map(({ status, location }) => `${status} ${location ?? ''}`))).toEqual(new Set([`303 ${peopleOf(id)}/slips`]));
    const slips = slipsOn(await tutor.get(`${peopleOf(id)}/slips`));
    expect([...slips.keys()]).toEqual(['Barnaby', 'Corin']);
    for (const words of slips.values()) expect((await comeBack(words)).in).toBe(true);
    expect(await app.rows(`SELECT count(*)::int AS n FROM person WHERE display_name IN ('Barnaby', 'Corin')`)).toEqual([{ n: 2 }]);
  });

  it('are made all or none', async () => {
    const id = await makeClass(tutor, 'All or none');
    const before = await app.rows('SELECT count(*)::int AS n FROM person');
    await app.rows(`CREATE FUNCTION refuse() RETURNS trigger AS $$ BEGIN RAISE EXCEPTION 'no'; END $$ LANGUAGE plpgsql`);
    await app.rows('CREATE TRIGGER refuse BEFORE INSERT ON class_member EXECUTE FUNCTION refuse()');
    expect((await onPeople(tutor, id, 'add', { names: 'Ivo\nPerpetua' })).status).toBe(500);
    await app.rows('DROP TRIGGER refuse ON class_member');
    expect(await app.rows('SELECT count(*)::int AS n FROM person')).toEqual(before);
  });
});

describe('the page with slips', () => {
  it('shows them again on a reload, for a quarter of an hour, until they are hidden; the server keeps no phrase', async () => {
    const id = await makeClass(tutor, 'Once');
    const [words] = (await addNames(tutor, id, 'Hesper')).values();
    const path = `${peopleOf(id)}/slips`;
    const again = await tutor.get(path);
    expect(slipsOn(again).get('Hesper')).toEqual(words);
    expect(again.headers['cache-control']).toBe('no-store');
    await tutor.get(`${path}/kept`);
    const gone = await tutor.get(path);
    expect(gone.html.querySelector('h1')?.text).toBe('No slip to show');
    expect(gone.words).toContain('make a new one');
    const dump = JSON.stringify([
      await app.rows('SELECT * FROM person'),
      await app.rows('SELECT * FROM session'),
      await app.rows('SELECT * FROM study_class'),
    ]);
    expect(dump).not.toContain((words ?? []).join(' '));
    expect(dump).not.toContain((words ?? []).join('-'));
  });

  it('has its cookie for itself alone, out of reach of scripts, and for a quarter of an hour', async () => {
    const id = await makeClass(tutor, 'Cookie');
    const sent = await tutor.submit(await tutor.get(peopleOf(id)), `${peopleOf(id)}/add`, { names: 'Juniper' });
    const cookie = [sent.headers['set-cookie']].flat().find((text) => String(text).startsWith('rungwise-slips='));
    expect(String(cookie)).toMatch(
      new RegExp(`^rungwise-slips=[\\w.-]+; Max-Age=900; Path=/classes/${id}/people/slips; HttpOnly; SameSite=Strict$`),
    );
  });

  it('leaves out whoever is not in that class, whatever the cookie says', async () => {
    const [id, elsewhere] = [await makeClass(tutor, 'Here'), await makeClass(other, 'There')];
    await addNames(other, elsewhere, 'Secret name');
    const stolen = other.cookies.get('rungwise-slips') ?? '';
    tutor.cookies.set('rungwise-slips', stolen);
    const page = await tutor.get(`${peopleOf(id)}/slips`);
    expect([page.status, slipsOn(page).size]).toEqual([200, 0]);
    expect(page.text).not.toContain('Secret name');
    for (const broken of ['', '%00', '_._', `${'9'.repeat(30)}.a-b`, 'x'.repeat(5000)]) {
      tutor.cookies.set('rungwise-slips', broken);
      expect((await tutor.get(`${peopleOf(id)}/slips`)).status).toBe(200);
    }
    tutor.cookies.delete('rungwise-slips');
  });
});

describe('a new slip for a lost phrase', () => {
  async function member(name: string): Promise<{ id: number; words: string[]; visitor: Visitor; link: string }> {
    const id = await makeClass(tutor, `Class of ${name}`);
    const words = (await addNames(tutor, id, name)).get(name) ?? [];
    const { visitor } = await comeBack(words);
    return { id, words, visitor, link: personLink(await tutor.get(peopleOf(id)), name) };
  }

  it('ends the old phrase and every session, keeps what was learnt, and is told to the candidate', async () => {
    const { id, words, visitor, link } = await member('Perpetua');
    await visitor.get(await visitor.round('5'));
    const page = await tutor.get(link);
    // A second step: what follows is said before the button.
    expect(page.html.querySelector(`details form[action="${link}/slip"]`)?.text).toContain('The old phrase stops working at once');
    const shown = await tutor.get((await tutor.submit(page, `${link}/slip`)).location ?? '');
    const fresh = slipsOn(shown).get('Perpetua') ?? [];
    expect(fresh).toHaveLength(7);
    expect((await visitor.get('/me')).status).toBe(401);
    expect((await comeBack(words)).in).toBe(false);
    const back = await comeBack(fresh);
    expect(back.in).toBe(true);
    expect(
      await app.rows(`SELECT count(*)::int AS n FROM round r JOIN person p ON p.id = r.person_id WHERE display_name = 'Perpetua'`),
    ).toEqual([{ n: 1 }]);
    for (const path of ['/my-classes', '/me'])
      expect((await back.visitor.get(path)).words).toContain('Tessa made a new return slip for you on Wednesday 25 November 2026.');
    expect((await tutor.get(link)).words).toContain('A new return slip was last made on Wednesday 25 November 2026 at 19:00 by Tessa.');
    expect(await app.rows(`SELECT slip_at FROM person WHERE display_name = 'Perpetua'`)).toEqual([{ slip_at: app.clock.now() }]);
    expect(id).toBeGreaterThan(0);
  });

  it('is not forgotten when the candidate makes a phrase of their own: whoever came in by the slip could hide it else', async () => {
    const { link } = await member('Wary');
    const shown = await tutor.get((await tutor.submit(await tutor.get(link), `${link}/slip`)).location ?? '');
    const { visitor } = await comeBack(slipsOn(shown).get('Wary'));
    await visitor.submit(await visitor.get('/me'), '/me/phrase');
    expect((await visitor.get('/my-classes')).words).toContain('Tessa made a new return slip for you');
  });

  it('is made once when the button is pressed twice, one after the other or at the same moment', async () => {
    const { link } = await member('Double');
    const page = await tutor.get(link);
    const send = () => tutor.submit(page, `${link}/slip`);
    const sent = [...(await Promise.all([send(), send()])), await send()];
    expect(
      sent.filter(({ headers }) => headers['set-cookie'] !== undefined && String(headers['set-cookie']).includes('rungwise-slips')),
    ).toHaveLength(1);
    const words = slipsOn(await tutor.get(sent[2]?.location ?? '')).get('Double');
    expect((await comeBack(words)).in).toBe(true);
    // A later wish, from a page opened later, makes another.
    app.clock.forward(1000);
    const later = slipsOn(await tutor.get((await tutor.submit(await tutor.get(link), `${link}/slip`)).location ?? '')).get('Double');
    expect(later).not.toEqual(words);
    expect((await comeBack(words)).in).toBe(false);
  });

  it('is not made for somebody who has left meanwhile, nor for one of another class, nor for staff', async () => {
    const { id, words, link, visitor } = await member('Leaver');
    const page = await tutor.get(link);
    await visitor.submit(await visitor.get('/my-classes'), `/my-classes/${id}/leave`);
    expect((await tutor.submit(page, `${link}/slip`)).status).toBe(404);
    expect((await comeBack(words)).in).toBe(true);
    const elsewhere = await member('Elsewhere');
    const others = await makeClass(other, 'Of Tobias');
    const [person] = await app.rows<{ id: number }>(`SELECT id FROM person WHERE display_name = 'Elsewhere'`);
    const own = await other.get(peopleOf(others));
    const csrf = own.html.querySelector('input[name=_csrf]')?.getAttribute('value') ?? '';
    for (const target of [person?.id, 1, 2]) {
      const sent = await other.send('POST', `${peopleOf(others)}/${target}/slip`, { _csrf: csrf, before: '' });
      expect(sent.status).toBe(404);
    }
    expect((await comeBack(elsewhere.words)).in).toBe(true);
  });

  it('leaves an open paper running: the candidate comes back by the slip and finishes it', async () => {
    await withBlueprint(app);
    app.clock.forward(120_000);
    const { link, visitor } = await member('Sitter');
    const made = await visitor.submit(await visitor.get('/papers'), '/papers', { paper: 'small/six', extra: '0' });
    const sitting = made.location ?? '';
    await beginPaper(visitor, sitting);
    const shown = await tutor.get((await tutor.submit(await tutor.get(link), `${link}/slip`)).location ?? '');
    const { visitor: again } = await comeBack(slipsOn(shown).get('Sitter'));
    expect((await again.get(`${sitting}/1`)).status).toBe(200);
    expect((await again.submit(await again.get(`${sitting}/hand-in`), `${sitting}/hand-in`)).status).toBe(303);
  });
});

describe('joining slips', () => {
  it('are as many as wished, all with the class, the code in fours, its last moment and the address', async () => {
    const id = await makeClass(tutor, 'Joiners', { exam: '', paper: '', meetsOn: '4', meetsAt: '19:30' });
    expect((await tutor.get(`${peopleOf(id)}/join-slips`)).words).toContain('no joining code that is good just now');
    const code = await makeJoinCode(tutor, id, '7');
    for (const [copies, count] of [
      ['', 4],
      ['?copies=12', 12],
      ['?copies=5000', 4],
      ['?copies=x', 4],
    ] as const) {
      const page = await tutor.get(`${peopleOf(id)}/join-slips${copies}`);
      const slips = page.html.querySelectorAll('.cut');
      expect(slips).toHaveLength(count);
      const [text] = slips.map((slip) => slip.text.replace(/\s+/g, ' '));
      for (const part of [
        'Joiners',
        'Thursdays, 19:30',
        'Tessa',
        `${code.slice(0, 4)} ${code.slice(4)}`,
        'http://localhost:80/join',
        'Good until Wednesday 2 December 2026 at 19:0',
      ])
        expect(text).toContain(part);
    }
  });

  it('say so where the address works on this machine only', async () => {
    const id = await makeClass(tutor, 'Local');
    await makeJoinCode(tutor, id);
    const words = async (path: string, host: string) => (await tutor.send('GET', path, undefined, { host })).words;
    for (const path of [peopleOf(id), `${peopleOf(id)}/join-slips`]) {
      expect(await words(path, 'localhost:3000')).toContain('this computer only');
      expect(await words(path, 'club.example')).not.toContain('this computer only');
    }
  });
});

describe('the log', () => {
  it('holds no code, no phrase and no name of what was done above', async () => {
    const id = await makeClass(tutor, 'Marker class');
    const code = await makeJoinCode(tutor, id);
    const words = (await addNames(tutor, id, 'Marker name')).get('Marker name') ?? [];
    await joinWith(await app.candidate('Marker candidate'), code);
    const visitor = somebody();
    await visitor.get(`/join/${code}`);
    await visitor.get(`/join/${code.slice(0, 7)}2`);
    await visitor.get(`/join/${code.slice(0, 7)}!`);
    expect(lines.length).toBeGreaterThan(0);
    const log = lines.join('\n');
    for (const secret of [code, words.join(' '), words.join('-'), 'Marker']) expect(log).not.toContain(secret);
  });
});
