import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { Shown, Visitor } from '../support/app.js';
import { fieldsOf, sign, skilledApp, ticks, type Skilled } from '../support/skilled.js';

/** Who sees and signs what, over two classes and all roles. */

let world: Skilled;
let own: string;
let other: string;
beforeAll(async () => {
  world = await skilledApp();
  const { ids } = world;
  own = `/classes/${ids.class}/skills`;
  other = `/classes/${ids.otherClass}/skills`;
});
afterAll(() => world.app.close());

const signatures = async (): Promise<number> => (await world.app.rows<{ count: number }>('SELECT count(*) FROM sign_off'))[0]?.count ?? -1;
const withToken = async (visitor: Visitor, page: string): Promise<Record<string, string>> => ({
  _csrf: (await visitor.get(page)).html.querySelector('input[name=_csrf]')?.getAttribute('value') ?? '',
});
const id = '11111111-1111-4111-8111-111111111111';

describe('the skills of a class', () => {
  it('are for its tutor and for administrators, page by page', async () => {
    const { tessa, administrator, ids } = world;
    for (const address of [own, `${own}/sheet`, `${own}/${ids.odo}`, `${own}/${ids.odo}/record`])
      for (const visitor of [tessa, administrator]) expect((await visitor.get(address)).status, address).toBe(200);
  });

  it('answer another class’s tutor as a class that does not exist, word for word', async () => {
    const { tessa, ids } = world;
    const plain = ({ status, words }: Shown): unknown => [status, words];
    for (const rest of ['', '/sheet', `/${ids.wilf}`, `/${ids.wilf}/record`]) {
      const [there, nowhere] = [await tessa.get(`${other}${rest}`), await tessa.get(`/classes/999999/skills${rest}`)];
      expect(there.status, rest).toBe(404);
      expect(plain(there)).toEqual(plain(nowhere));
    }
  });

  it('refuse candidates and visitors', async () => {
    const { odo, app, ids } = world;
    for (const address of [own, `${own}/sheet`, `${own}/${ids.odo}`, `${own}/${ids.odo}/record`]) {
      expect((await odo.get(address)).status, address).toBe(403);
      expect((await app.visitor('10.9.9.9').get(address)).status, address).toBe(401);
    }
  });

  it('show nobody of another class under an own class’s address', async () => {
    const { tessa, administrator, ids } = world;
    for (const visitor of [tessa, administrator])
      for (const rest of ['', '/record']) expect((await visitor.get(`${own}/${ids.wilf}${rest}`)).status).toBe(404);
    expect((await tessa.get(own)).words).not.toContain('Wilf');
  });

  it('are not signed by another class’s tutor, nor for whoever is not in the class, nor by a candidate', async () => {
    const { tessa, ludo, odo, ids } = world;
    const sheet = fieldsOf(await tessa.get(`${own}/${ids.odo}`), 'small/lead');
    const filled = { ...sheet, ...ticks(3) };
    // Ludo's own token, with all else as Tessa's page has it.
    const ludos = { ...filled, ...(await withToken(ludo, `${other}/${ids.wilf}`)) };
    expect((await ludo.send('POST', `${own}/${ids.odo}`, ludos)).status).toBe(404);
    expect((await ludo.send('POST', `${other}/${ids.odo}`, ludos)).status).toBe(404);
    expect((await tessa.send('POST', `${own}/${ids.wilf}`, filled)).status).toBe(404);
    expect((await odo.send('POST', `${own}/${ids.odo}`, { ...filled, ...(await withToken(odo, '/me')) })).status).toBe(403);
    expect(await signatures()).toBe(0);
  });

  it('are signed by an administrator who is no tutor of the class', async () => {
    const { administrator, ids } = world;
    const sent = await sign(administrator, `${own}/${ids.odo}`, 'small/plug', ticks(4));
    expect([sent.status, sent.location]).toEqual([303, `${own}/${ids.odo}#small_plug`]);
    expect((await administrator.get(`${own}/${ids.odo}`)).words).toContain('Seen and signed on 26 Nov 2026 by Alma.');
  });

  it('are withdrawn by nobody who could not have signed them', async () => {
    const { ludo, tessa, odo, ids, app } = world;
    await sign(tessa, `${own}/${ids.odo}`, 'small/lead', ticks(3));
    const [row] = await app.rows<{ id: string }>("SELECT id FROM sign_off WHERE skill = 'small/lead'");
    const wish = { id: row?.id ?? '', reason: 'Mine now.' };
    const ludos = { ...wish, ...(await withToken(ludo, `${other}/${ids.wilf}`)) };
    expect((await ludo.send('POST', `${own}/${ids.odo}/withdraw`, ludos)).status).toBe(404);
    // Under his own candidate's address, with the id of a signature that is not that candidate's.
    expect((await ludo.send('POST', `${other}/${ids.wilf}/withdraw`, ludos)).status).toBe(404);
    expect((await odo.send('POST', `${own}/${ids.odo}/withdraw`, { ...wish, ...(await withToken(odo, '/me')) })).status).toBe(403);
    expect(await app.rows('SELECT id FROM sign_off WHERE withdrawn_at IS NOT NULL')).toEqual([]);
  });
});

describe('a candidate’s own skills', () => {
  it('are for candidates, each with their own', async () => {
    const { odo, wilf, tessa, app } = world;
    expect((await odo.get('/skills')).words).toContain('Look over a lead: signed');
    expect((await wilf.get('/skills')).words).toContain('0 of 2 seen and signed by a tutor.');
    expect((await wilf.get('/skills')).text).not.toContain('Tessa');
    expect((await tessa.get('/skills')).status).toBe(403);
    expect((await app.visitor('10.9.9.9').get('/skills')).status).toBe(401);
  });

  it('are led to from the page of progress', async () => {
    expect((await world.odo.get('/progress')).html.querySelector('a[href="/skills"]')?.text).toBe('Practical skills');
  });

  it.each(['/classes/x/skills', '/classes/0/skills', '/classes/99999999999/skills', '/classes/1/skills/-1', '/classes/1/skills/x'])(
    'leave %s an address that is not there',
    async (address) => {
      expect((await world.tessa.get(address)).status).toBe(404);
    },
  );

  it('stay the candidate’s after leaving the class, while its tutor’s sheet of them is gone', async () => {
    const { odo, tessa, ids, app } = world;
    await app.rows('DELETE FROM class_member WHERE person_id = $1', [ids.odo]);
    for (const rest of ['', '/record']) expect((await tessa.get(`${own}/${ids.odo}${rest}`)).status).toBe(404);
    const page = await odo.get('/skills?all=yes');
    expect(page.words).toContain('Seen and signed on 26 Nov 2026 by Tessa.');
    expect(page.words).toContain('Seen and signed on 26 Nov 2026 by Alma.');
    // A form that was open meanwhile signs nothing.
    const wish = { id, skill: 'small/lead', mark: 'x', seenOn: '2026-11-26', remarks: '', ...ticks(3) };
    const sent = await tessa.send('POST', `${own}/${ids.odo}`, { ...wish, ...(await withToken(tessa, '/me')) });
    expect(sent.status).toBe(404);
  });
});
