import { existsSync, readFileSync } from 'node:fs';
import { register } from 'node:module';
import { fileURLToPath } from 'node:url';
import { isMainThread } from 'node:worker_threads';
import typescript from 'typescript';

/**
 * Lets a child process of a test run the project from its TypeScript source, without a build: start it with
 * NODE_OPTIONS=--import=<this file>. Types are only taken away here; the checks of the project look at them.
 */
if (isMainThread) register(import.meta.url);

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
  const compilerOptions = { module: typescript.ModuleKind.ESNext, target: typescript.ScriptTarget.ES2022, verbatimModuleSyntax: true };
  const { outputText } = typescript.transpileModule(readFileSync(fileURLToPath(url), 'utf8'), { compilerOptions });
  return { format: 'module', source: outputText, shortCircuit: true };
}
