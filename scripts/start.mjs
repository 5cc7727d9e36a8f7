// npm start: makes the project ready, then runs the server in this same process. Arguments go on to it (--demo).
import { pathToFileURL } from 'node:url';
import { join } from 'node:path';
import { projectFolder } from './processes.mjs';
import { setUp } from './set-up.mjs';
import { runScript } from './steps.mjs';

await runScript(async () => {
  await setUp();
  await import(pathToFileURL(join(projectFolder, 'dist', 'src', 'web', 'main.js')).href);
});
