import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { wayBack } from '../../src/accounts/index.js';
import { testApp, type TestApp, type Visitor } from '../support/app.js';
import { staffOf } from '../support/staff.js';

/** The way back of an administrator who has lost password or codes, from the server's own shell. */

let app: TestApp;
let administrator: Visitor;
beforeAll(async () => {
  app = await testApp();
  ({ administrator } = await staffOf(app));
});
afterAll(() => app.close());

describe('the link that the command new-password makes', () => {
  it('leads to a new password once, within an hour, takes codes off, ends all sessions, and is written down', async () => {
    await app.rows(`UPDATE person SET totp_secret = '\\x00', totp_step = 1 WHERE display_name = 'Alma'`);
    const made = await wayBack(app.db, app.clock.now(), '  ALMA ');
    expect((await administrator.get('/upkeep')).status).toBe(401);
    const visitor = app.visitor('10.0.0.8');
    const link = `/invitation/${made?.token ?? ''}`;
    const sent = await visitor.submit(await visitor.get(link), link, { password: 'seven new kettles whistle' });
    expect(sent.status).toBe(303);
    expect((await visitor.get('/upkeep')).status).toBe(200);
    expect((await app.visitor('10.0.0.9').get(link)).status).toBe(404);
    const [line] = await app.rows<{ role: string; what: string }>('SELECT role, what FROM staff_change ORDER BY id DESC LIMIT 1');
    expect(line).toEqual({ role: 'command', what: 'makes a link for a new password, and takes one-time codes off' });
  });

  it('opens nothing after an hour', async () => {
    const made = await wayBack(app.db, app.clock.now(), 'Alma');
    app.clock.forward(3_600_001);
    expect((await app.visitor('10.0.0.10').get(`/invitation/${made?.token ?? ''}`)).status).toBe(404);
  });

  it('is made for nobody else: no unknown name, no candidate, no closed account', async () => {
    await app.candidate('Odo');
    await app.rows(`UPDATE person SET closed_at = now() WHERE display_name = 'Tessa'`);
    for (const name of ['Nobody', 'Odo', 'Tessa', '']) expect(await wayBack(app.db, app.clock.now(), name)).toBeNull();
  });
});
