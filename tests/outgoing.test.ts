import { readFile, readdir } from 'node:fs/promises';
import { createServer } from 'node:net';
import { join } from 'node:path';
import ts from 'typescript';
import { describe, expect, it } from 'vitest';
import { readPackFolder } from '../src/packs/read-folder.js';
import { projectFolder } from '../src/platform/project-folder.js';
import { folderOf } from './packs/temporary-pack.js';

/** The server asks nobody for anything: no pack, link or picture makes it open a connection. The database's own client is all there is. */

/** Of the modules that can reach another machine, what is used for something else. */
const allowed: Readonly<Record<string, readonly string[]>> = {
  // To tell an address from a name, and to find a port that is free.
  'node:net': ['isIP', 'createServer'],
  // For listening.
  'node:http': ['createServer'],
};
const reaching =
  /^(?:node:)?(?:net|tls|dgram|dns|dns\/promises|http|https|http2|inspector)$|^(?:undici|axios|node-fetch|got|ws|nodemailer)(?:\/|$)/;
const globals = new Set(['fetch', 'WebSocket', 'EventSource', 'XMLHttpRequest']);

/** What a source uses to reach others. */
function waysOut(text: string): string[] {
  const found: string[] = [];
  const visit = (node: ts.Node): void => {
    if (ts.isImportDeclaration(node) && ts.isStringLiteral(node.moduleSpecifier) && node.importClause?.isTypeOnly !== true) {
      const from = node.moduleSpecifier.text;
      const named = node.importClause?.namedBindings;
      const names =
        named !== undefined && ts.isNamedImports(named)
          ? named.elements.filter((one) => !one.isTypeOnly).map((one) => (one.propertyName ?? one.name).text)
          : ['*'];
      if (reaching.test(from))
        found.push(...names.filter((name) => allowed[from]?.includes(name) !== true).map((name) => `${name} of ${from}`));
    }
    if (ts.isCallExpression(node) && node.expression.kind === ts.SyntaxKind.ImportKeyword) {
      const [from] = node.arguments;
      if (from !== undefined && ts.isStringLiteral(from) && reaching.test(from.text)) found.push(`import of ${from.text}`);
    }
    if (ts.isIdentifier(node) && globals.has(node.text) && (ts.isCallExpression(node.parent) || ts.isNewExpression(node.parent)))
      found.push(node.text);
    if (ts.isPropertyAccessExpression(node) && globals.has(node.name.text) && node.expression.getText() === 'globalThis')
      found.push(node.getText());
    ts.forEachChild(node, visit);
  };
  visit(ts.createSourceFile('x.ts', text, ts.ScriptTarget.ES2022, true));
  return found;
}

describe('ways out of the server', () => {
  it('are found where there are any', () => {
    expect(waysOut("import { request } from 'node:https'; import { isIP, connect } from 'node:net'; import 'undici';")).toEqual([
      'request of node:https',
      'connect of node:net',
      '* of undici',
    ]);
    expect(waysOut("await fetch('http://a.b'); new WebSocket(x); await import('node:dns'); const fetched = 1;")).toEqual([
      'fetch',
      'WebSocket',
      'import of node:dns',
    ]);
    expect(waysOut("import { type Socket } from 'node:net'; import type { Server } from 'node:http'; // fetch()")).toEqual([]);
  });

  it('are in no source but the browser’s', async () => {
    const faults: string[] = [];
    let looked = 0;
    for (const root of ['src', 'shared']) {
      for (const name of await readdir(join(projectFolder, root), { recursive: true })) {
        if (!name.endsWith('.ts') || name.includes('generated') || name.startsWith('browser')) continue;
        looked += 1;
        faults.push(...waysOut(await readFile(join(projectFolder, root, name), 'utf8')).map((way) => `${root}/${name}: ${way}`));
      }
    }
    expect(looked).toBeGreaterThan(300);
    expect(faults).toEqual([]);
  });

  it('are not opened by a pack that is full of addresses', async () => {
    let came = 0;
    const listener = createServer((socket) => {
      came += 1;
      socket.destroy();
    });
    await new Promise<void>((resolve) => listener.listen(0, '127.0.0.1', resolve));
    const { port } = listener.address() as { port: number };
    const address = `http://127.0.0.1:${port}/x`;
    const folder = await folderOf({
      'pack.yaml': `pack:\n  id: far\n  title: ${address}\n  licence: ${address}\n  authors: ["${address}"]\n  summary: see ${address}\n`,
      'sources.yaml': `sources:\n  - id: a\n    title: b\n    url: ${address}\n`,
      'drawings/far.svg': `<?xml version="1.0"?><?xml-stylesheet href="${address}"?><!DOCTYPE svg SYSTEM "${address}" [<!ENTITY % e SYSTEM "${address}"> %e;]><svg xmlns="http://www.w3.org/2000/svg"><image href="${address}"/><use href="${address}#a"/></svg>`,
    });
    const { findings } = await readPackFolder(folder);
    await new Promise((resolve) => setTimeout(resolve, 200));
    listener.close();
    expect(findings.some(({ file }) => file.endsWith('far.svg'))).toBe(true);
    expect(came).toBe(0);
  });
});
