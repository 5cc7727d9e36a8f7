// Finds a Chromium for the browser tests: the one that is named, one that is installed, or one that a package carries.
import { access, constants } from 'node:fs/promises';
import { delimiter, join } from 'node:path';

const names = ['chromium', 'chromium-browser', 'google-chrome', 'google-chrome-stable', 'chrome'];
const places = [
  '/usr/bin/chromium',
  '/usr/lib/chromium/chromium',
  '/opt/google/chrome/chrome',
  '/Applications/Google Chrome.app/Contents/MacOS/Google Chrome',
  '/Applications/Chromium.app/Contents/MacOS/Chromium',
  String.raw`C:\Program Files\Google\Chrome\Application\chrome.exe`,
];

async function canRun(path) {
  return access(path, constants.X_OK).then(
    () => true,
    () => false,
  );
}

/** Playwright keeps browsers of its own, if somebody has installed one. */
async function fromPlaywright() {
  return import('playwright-core').then(
    ({ chromium }) => chromium.executablePath(),
    () => '',
  );
}

/** @returns {Promise<string | undefined>} the program's path, or undefined when there is none */
export async function findChromium() {
  const named = process.env.CHROMIUM_PATH;
  if (named) return (await canRun(named)) ? named : undefined;
  const onPath = (process.env.PATH ?? '').split(delimiter).flatMap((folder) => names.map((name) => join(folder, name)));
  for (const path of [...onPath, ...places, await fromPlaywright()]) {
    if (path && (await canRun(path))) return path;
  }
  return undefined;
}
