// npm run dev: runs the server and starts it anew whenever a source, a page or a pack changes. Arguments go on to it.
import { spawn } from 'node:child_process';
import { watch } from 'node:fs';
import { join } from 'node:path';
import { projectFolder } from './processes.mjs';

const watched = ['src', 'shared', 'views', 'prisma', 'question-packs', 'public'];
const settleMs = 200;
let child;
let timer;
let stopping = false;

function start() {
  child = spawn(process.execPath, [join(projectFolder, 'scripts', 'start.mjs'), ...process.argv.slice(2)], {
    cwd: projectFolder,
    stdio: 'inherit',
  });
  child.on('exit', () => {
    child = undefined;
    if (stopping) process.exit(0);
  });
}

/** Waits for the old one to let go of its port. */
function restart() {
  console.log('        changed; starting again');
  if (!child) return start();
  child.once('exit', start);
  child.kill('SIGTERM');
}

for (const folder of watched) {
  watch(join(projectFolder, folder), { recursive: true }, (_event, name) => {
    if (stopping || !name || name.includes('generated')) return;
    clearTimeout(timer);
    timer = setTimeout(restart, settleMs);
  });
}
for (const signal of ['SIGINT', 'SIGTERM']) {
  process.on(signal, () => {
    stopping = true;
    if (child) child.kill('SIGTERM');
    else process.exit(0);
  });
}
start();
