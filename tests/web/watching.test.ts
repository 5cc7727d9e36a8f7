import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { ensureInstallation } from '../../src/accounts/index.js';
import { buildApp } from '../../src/web/app.js';
import { listenForMetrics } from '../../src/web/metrics.js';
import { testApp, Visitor, type TestApp } from '../support/app.js';
import { testPlace } from '../support/server-place.js';

/** What whoever watches a server is told, and what not. */

let app: TestApp;
beforeAll(async () => {
  app = await testApp();
});
afterAll(() => app.close());

describe('the addresses for watching', () => {
  it('/health and /ready say one word each while all is well', async () => {
    const visitor = app.visitor();
    expect([(await visitor.get('/health')).text, (await visitor.get('/ready')).text]).toEqual(['{"database":"ok"}', '{"ready":true}']);
  });

  it('a server whose database is at another migration is alive and not ready', async () => {
    await app.db.pool.query(`UPDATE _prisma_migrations SET migration_name = '9' || migration_name WHERE migration_name LIKE '0010%'`);
    const visitor = app.visitor();
    const [health, ready] = [await visitor.get('/health'), await visitor.get('/ready')];
    expect([health.status, ready.status, ready.text]).toEqual([200, 503, '{"ready":false}']);
    await app.db.pool.query(`UPDATE _prisma_migrations SET migration_name = substr(migration_name, 2) WHERE migration_name LIKE '9%'`);
    expect((await visitor.get('/ready')).status).toBe(200);
  });

  it('figures are not on the pages’ own address, whoever asks', async () => {
    expect((await app.visitor().get('/metrics')).status).toBe(404);
    expect(app.figures).toBeNull();
  });
});

describe('figures for monitoring, where they are asked for', () => {
  it('count routes and not addresses, in the text format, on a listener of their own', async () => {
    const installation = await ensureInstallation(app.db, { cookieSecret: Buffer.alloc(32), phraseSalt: Buffer.alloc(16) });
    const { place } = testPlace(app.url, () => app.clock.now());
    const measured = await buildApp({
      db: app.db,
      clock: app.clock,
      installation,
      place,
      origin: null,
      trustProxy: [],
      logger: false,
      measured: true,
    });
    const visitor = new Visitor(measured, '10.9.9.9');
    await visitor.start('Marker Person');
    await visitor.get(await visitor.round());
    await visitor.get('/nowhere/marker-address');
    await visitor.get('/join/K7QW3MXP');
    const listener = await listenForMetrics(measured.figures as never, { host: '127.0.0.1', port: 0 });
    const response = await fetch(`http://127.0.0.1:${listener.port}/metrics`);
    const text = await response.text();
    expect(response.headers.get('content-type')).toContain('text/plain');
    // Each line of the format: a comment, or name{labels} value.
    const odd = text
      .split('\n')
      .filter((line) => line !== '' && !/^(# (HELP|TYPE) \S+ .*|[a-zA-Z_:][\w:]*(\{[^}]*\})? [-+\w.]+)$/.test(line));
    expect(odd).toEqual([]);
    expect(text).toMatch(/rungwise_request_seconds_count\{method="GET",route="\/study\/rounds\/:round",status="200"\} [1-9]/);
    expect(text).toMatch(/rungwise_database_connections\{state="idle"\} \d/);
    expect(text).not.toMatch(/Marker|marker-address|K7QW3MXP|[0-9a-f]{8}-[0-9a-f]{4}/);
    expect((await fetch(`http://127.0.0.1:${listener.port}/`)).status).toBe(404);
    expect((await fetch(`http://127.0.0.1:${listener.port}/metrics`, { method: 'POST' })).status).toBe(404);
    await listener.close();
    await measured.server.close();
  });
});
