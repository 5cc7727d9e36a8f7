import { createHash } from 'node:crypto';
import { existsSync, mkdirSync, readFileSync, renameSync, writeFileSync } from 'node:fs';
import { register } from 'node:module';
import { isMainThread } from 'node:worker_threads';

/**
 * Lets a child process of a test run the project from its TypeScript source, without a build: start it with
 * NODE_OPTIONS=--import=<this file>. Types are only taken away here; the checks of the project look at them.
 * What was translated once is kept, since loading the compiler takes longer than the whole child otherwise.
 */
if (isMainThread) register(import.meta.url);

const kept = new URL('../../node_modules/.cache/rungwise-from-source/', import.meta.url);

export async function resolve(specifier, context, next) {
  const url = /^(file:|\.)/.test(specifier) ? new URL(specifier, context.parentURL) : null;
  if (url?.pathname.endsWith('.js') && !existsSync(url)) {
    url.pathname = url.pathname.replace(/\.js$/, '.ts');
    if (existsSync(url)) return { url: url.href, format: 'module', shortCircuit: true };
  }
  return next(specifier, context);
}

export async function load(url, context, next) {
  if (!url.startsWith('file:') || !url.endsWith('.ts')) return next(url, context);
  return { format: 'module', source: await translated(readFileSync(new URL(url), 'utf8')), shortCircuit: true };
}

async function translated(source) {
  const file = new URL(`${createHash('sha256').update(source).digest('hex')}.mjs`, kept);
  if (existsSync(file)) return readFileSync(file, 'utf8');
  const { default: typescript } = await import('typescript');
  const compilerOptions = { module: typescript.ModuleKind.ESNext, target: typescript.ScriptTarget.ES2022, verbatimModuleSyntax: true };
  const { outputText } = typescript.transpileModule(source, { compilerOptions });
  mkdirSync(kept, { recursive: true });
  const unfinished = new URL(`${file.href}.${process.pid}`);
  writeFileSync(unfinished, outputText);
  renameSync(unfinished, file);
  return outputText;
}
