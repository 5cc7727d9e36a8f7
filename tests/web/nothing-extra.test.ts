import { readFile, readdir } from 'node:fs/promises';
import { request, type IncomingMessage } from 'node:http';
import type { AddressInfo } from 'node:net';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { projectFolder } from '../../src/platform/project-folder.js';
import { testApp, type TestApp } from '../support/app.js';

/** What a server in use must not give away: how it was built, what lies in its folders, what it runs on. */

let app: TestApp;
let port: number;
beforeAll(async () => {
  app = await testApp();
  await app.server.listen({ port: 0, host: '127.0.0.1' });
  port = (app.server.server.address() as AddressInfo).port;
});
afterAll(() => app.close());

function ask(method: string, path: string): Promise<IncomingMessage & { text: string }> {
  return new Promise((resolve, reject) => {
    const sent = request({ port, host: '127.0.0.1', method, path, headers: { 'x-marker': 'carried-back' } }, (answer) => {
      let text = '';
      answer.setEncoding('utf8').on('data', (part: string) => (text += part));
      answer.on('end', () => resolve(Object.assign(answer, { text })));
    });
    sent.on('error', reject);
    sent.end();
  });
}

describe('The server gives nothing away', () => {
  it.each(['TRACE', 'OPTIONS', 'PROPFIND', 'PUT'])('by the method %s, which it does not know', async (method) => {
    for (const path of ['/', '/assets/rungwise.css', '/nowhere']) {
      const answer = await ask(method, path);
      expect(answer.statusCode).toBeGreaterThanOrEqual(400);
      expect(answer.statusCode).toBeLessThan(500);
      expect(answer.text).not.toContain('carried-back');
    }
  });

  it('of what it runs on, in no header of a page, a file, a refusal or a fault', async () => {
    const version = process.versions.node;
    for (const path of ['/', '/assets/rungwise.css', '/health', '/nowhere', '/assets/nowhere.css', '/%zz']) {
      const { headers, text } = await ask('GET', path);
      expect(headers).not.toHaveProperty('server');
      expect(headers).not.toHaveProperty('x-powered-by');
      expect(JSON.stringify(headers) + text).not.toMatch(/fastify|node\.?js|postgres(?!ql, its own)/i);
      expect(JSON.stringify(headers) + text).not.toContain(version);
    }
  });

  it.each([
    '/assets/',
    '/assets',
    '/script/src/browser/',
    '/script/shared/',
    '/script/',
    '/assets/../package.json',
    '/assets/%2e%2e/package.json',
  ])('of what lies in the folder behind %s', async (path) => {
    const { statusCode, text } = await ask('GET', path);
    expect(statusCode).toBeGreaterThanOrEqual(400);
    // Names that no page links to, and a line of the file beside the folders.
    expect(text).not.toMatch(/overpass-OFL|numeric-field\.js|safety-maths|"dependencies"/);
  });

  it.each([
    '/.env',
    '/.git/config',
    '/package.json',
    '/data/',
    '/debug',
    '/status',
    '/server-status',
    '/script/src/web/main.js',
    '/script/src/browser/calculator.js.map',
  ])('at %s, where others leave something lying', async (path) => expect((await ask('GET', path)).statusCode).toBe(404));
});

it('The built folder holds no source maps, no sources and no stops for a debugger', async () => {
  const folder = join(projectFolder, 'dist');
  const entries = await readdir(folder, { recursive: true, withFileTypes: true });
  const files = entries.filter((entry) => entry.isFile()).map((entry) => join(entry.parentPath ?? entry.path, entry.name));
  expect(files.filter((name) => name.endsWith('.js')).length).toBeGreaterThan(100);
  expect(files.filter((name) => /\.(map|ts|tsbuildinfo)$/.test(name))).toEqual([]);
  const telling = [];
  for (const name of files.filter((one) => one.endsWith('.js'))) {
    if (/sourceMappingURL|^\s*debugger\b/m.test(await readFile(name, 'utf8'))) telling.push(name);
  }
  expect(telling).toEqual([]);
});
