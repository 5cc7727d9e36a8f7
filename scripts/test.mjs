// npm test: makes the project ready and runs every test, the browser tests included. Arguments go on to vitest.
import { mkdtemp, readFile, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { findChromium } from './chromium.mjs';
import { runTool } from './processes.mjs';
import { setUp } from './set-up.mjs';
import { runScript, StepError, step } from './steps.mjs';

const isCi = process.env.CI === 'true';

async function readyBrowser() {
  const path = await findChromium();
  if (path) process.env.RUNGWISE_CHROMIUM = path;
  else delete process.env.RUNGWISE_CHROMIUM;
  if (path) return path;
  const advice = 'Install Chromium (on Debian: apt-get install chromium), or name it in CHROMIUM_PATH.';
  if (isCi) throw new StepError('There is no Chromium, and here browser tests must not be skipped.', advice);
  return `none found: the browser tests will be skipped. ${advice}`;
}

/** Counts tests by vitest's report. A file that could not be run at all counts as one failed test. */
function count({ numPassedTests, numFailedTests, numPendingTests, numTodoTests, testResults }) {
  const broken = testResults.filter(
    ({ status, assertionResults }) => status === 'failed' && !assertionResults.some((test) => test.status === 'failed'),
  );
  return { passed: numPassedTests, failed: numFailedTests + broken.length, skipped: numPendingTests + (numTodoTests ?? 0) };
}

await runScript(async () => {
  await setUp({ dev: true });
  await step('browser', readyBrowser);
  const folder = await mkdtemp(join(tmpdir(), 'rungwise-report-'));
  const report = join(folder, 'report.json');
  try {
    const reporters = ['--reporter=default', '--reporter=json', `--outputFile.json=${report}`];
    const { code } = await runTool('vitest/vitest.mjs', ['run', ...reporters, ...process.argv.slice(2)], { show: true });
    const { passed, failed, skipped } = count(JSON.parse(await readFile(report, 'utf8')));
    const skippedInCi = isCi && skipped > 0;
    if (skippedInCi) console.error('Tests were skipped, and here that is a failure.');
    // A failure outside any test (a set-up, an error that nobody caught) must not end with "0 failed".
    const all = code !== 0 && failed === 0 ? 1 : failed;
    console.log(`\n${passed} passed, ${all} failed, ${skipped} skipped`);
    process.exitCode = code !== 0 || skippedInCi ? 1 : 0;
  } finally {
    await rm(folder, { recursive: true, force: true });
  }
});
