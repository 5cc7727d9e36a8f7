import { readFile, readdir } from 'node:fs/promises';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import ts from 'typescript';
import { projectFolder } from '../src/platform/project-folder.js';

async function sources(folder: string): Promise<{ name: string; text: string }[]> {
  const names = (await readdir(join(projectFolder, folder), { recursive: true })).filter(
    (name) => name.endsWith('.ts') && !name.includes('generated'),
  );
  return await Promise.all(
    names.map(async (name) => ({ name: `${folder}/${name}`, text: await readFile(join(projectFolder, folder, name), 'utf8') })),
  );
}

/** Calls that bring time, chance or the outside into a file, found in its syntax tree and not by words in comments. */
function impurities(text: string): string[] {
  const found: string[] = [];
  const visit = (node: ts.Node): void => {
    if (ts.isNewExpression(node) && node.expression.getText() === 'Date' && (node.arguments?.length ?? 0) === 0) found.push('new Date()');
    if (
      ts.isPropertyAccessExpression(node) &&
      /^(Math\.random|Date\.now|performance\.now|process\.\w+|globalThis\.\w+|crypto\.\w+)$/.test(node.getText())
    ) {
      found.push(node.getText());
    }
    ts.forEachChild(node, visit);
  };
  visit(ts.createSourceFile('x.ts', text, ts.ScriptTarget.ES2022, true));
  return found;
}

describe('purity', () => {
  it('the finder finds what it looks for, and nothing in comments or with a time handed in', () => {
    expect(impurities('const a = Math.random() + Date.now(); const b = new Date();')).toEqual(['Math.random', 'Date.now', 'new Date()']);
    expect(impurities('// Math.random() is refused\nconst c = new Date(5).toISOString();')).toEqual([]);
  });

  it('core and shared take time and chance as arguments', async () => {
    const files = [...(await sources('src/core')), ...(await sources('shared'))];
    expect(files.length).toBeGreaterThan(60);
    expect(files.flatMap(({ name, text }) => impurities(text).map((what) => `${name}: ${what}`))).toEqual([]);
  });
});

describe('sizes', () => {
  it('no source file is longer than 200 lines, but for lists of data', async () => {
    const data = ['src/core/return-phrase-words.ts'];
    const files = [...(await sources('src')), ...(await sources('shared'))];
    const long = files.filter(({ name, text }) => text.split('\n').length > 201 && !data.includes(name));
    expect(long.map(({ name, text }) => `${name}: ${text.split('\n').length} lines`)).toEqual([]);
  });
});
