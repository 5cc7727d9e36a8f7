// npm run check: what a machine can say about the code without running it. All checks run; one that fails shows what it found.
import { readdir } from 'node:fs/promises';
import { join } from 'node:path';
import { projectFolder, runTool } from './processes.mjs';
import { setUp } from './set-up.mjs';
import { StepError, runScript, step } from './steps.mjs';

const typescript = 'typescript/bin/tsc';
const formatted = '**/*.{ts,mts,mjs,json,css,md}';

async function hasTypeScript(folder) {
  return (await readdir(join(projectFolder, folder), { recursive: true })).some((name) => name.endsWith('.ts'));
}

async function types() {
  const folders = ['shared', 'src/core', 'src/browser', 'tests'];
  const checks = [['types server', typescript, ['-p', 'tsconfig.json', '--noEmit']]];
  for (const folder of folders) {
    if (await hasTypeScript(folder)) checks.push([`types ${folder}`, typescript, ['-p', folder, '--noEmit']]);
  }
  return checks;
}

await runScript(async () => {
  await setUp({ dev: true });
  const checks = [
    ...(await types()),
    ['lint', 'oxlint/bin/oxlint', ['--deny-warnings']],
    ['format', 'prettier/bin/prettier.cjs', ['--check', '--log-level=warn', formatted]],
    ['unused code', 'knip/bin/knip.js', ['--no-progress']],
  ];
  const failed = [];
  for (const [label, tool, args] of checks) {
    let output = '';
    await step(label, async () => {
      const result = await runTool(tool, args);
      output = result.output;
      if (result.code !== 0) throw new Error(label);
    }).catch(() => {
      failed.push(label);
      console.log(output);
    });
  }
  if (failed.length > 0)
    throw new StepError(`Found wanting: ${failed.join(', ')}.`, 'Read above what was found. `npx prettier --write .` mends the format.');
});
