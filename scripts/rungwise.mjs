#!/usr/bin/env node
// npx rungwise …: runs the commands, after making the project ready if anything has changed. What the set-up says goes to
// standard error, and only when it failed: standard output belongs to the command.
import { pathToFileURL } from 'node:url';
import { join } from 'node:path';
import { projectFolder } from './processes.mjs';
import { setUp } from './set-up.mjs';
import { StepError } from './steps.mjs';

const lines = [];
try {
  await setUp({ print: (line) => lines.push(line) });
} catch (error) {
  console.error(lines.join('\n'));
  console.error(error instanceof StepError ? `        ${error.message}\n        What to do: ${error.advice}` : error);
  process.exit(2);
}
await import(pathToFileURL(join(projectFolder, 'dist', 'src', 'cli', 'main.js')).href);
