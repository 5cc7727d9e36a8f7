// The real application, built and served as src/web/main.ts does.
import { ensureInstallation } from '../../dist/src/accounts/index.js';
import { systemClock } from '../../dist/src/platform/clock.js';
import { openDatabase } from '../../dist/src/platform/db.js';
import { tmpdir } from 'node:os';
import { readSettings } from '../../dist/src/platform/settings.js';
import { buildApp } from '../../dist/src/web/app.js';
import { serverPlace } from '../../dist/src/web/server-place.js';
import { answerTasks } from './child.mjs';

async function serve({ url }) {
  const db = openDatabase({ url, log: console.error });
  const installation = await ensureInstallation(db, { cookieSecret: Buffer.alloc(32), phraseSalt: Buffer.alloc(16) });
  const { place } = await serverPlace(readSettings({ DATABASE_URL: url }), tmpdir(), url);
  const { server } = await buildApp({
    db,
    clock: systemClock,
    installation,
    place,
    origin: null,
    trustProxy: [],
    logger: { level: 'warn' },
  });
  return server.listen({ port: 0, host: '127.0.0.1' });
}

answerTasks({ serve });
