import { parse } from 'node-html-parser';
import request from 'supertest';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { testApp, type TestApp } from '../support/app.js';

let app: TestApp;
beforeAll(async () => {
  app = await testApp();
  await app.server.ready();
});
afterAll(() => app.close());

describe('over real HTTP', () => {
  it('a browser that keeps its cookies comes in and stays in', async () => {
    const browser = request.agent(app.server.server);
    const welcome = await browser
      .get('/')
      .expect(200)
      .expect('content-type', /text\/html/);
    const form = parse(welcome.text).querySelector('form[action="/start"]');
    const field = (name: string) => form?.querySelector(`input[name="${name}"]`)?.getAttribute('value') ?? '';
    const fields = { _csrf: field('_csrf'), startToken: field('startToken'), name: 'Hesper', region: 'uk', timeZone: 'Europe/London' };
    await browser.post('/start').type('form').send(fields).expect(303);
    const now = await browser.get('/').expect(200);
    expect(parse(now.text).querySelector('.you')?.text).toContain('Hesper');
  });

  it.each([
    ['/assets/rungwise.css', /immutable/],
    ['/about', /^no-store$/],
  ])('%s is kept by the browser as long as it may be', async (path, kept) => {
    const { status, headers } = await request(app.server.server).get(path);
    expect(status).toBe(200);
    expect(headers['cache-control']).toMatch(kept);
  });

  it('health says ok while the database answers, and nothing more', async () => {
    const health = await request(app.server.server).get('/health').expect(200);
    expect(health.body).toEqual({ database: 'ok' });
  });
});
