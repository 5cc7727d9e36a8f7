import type { Command } from './command.js';

/** `npx rungwise <command>`: each command is a module of its own, loaded only when it is asked for. */
const commands: Record<string, { about: string; load: () => Promise<{ run: Command }> }> = {
  add: { about: 'check a pack (a folder or a ZIP file) and add it to the bank', load: () => import('./add.js') },
  analyse: { about: 'which question is bad, from a table of answers', load: () => import('./analyse.js') },
  backup: { about: 'write everything to one file, while the server runs or not', load: () => import('./backup.js') },
  calc: { about: 'work something out, with the working', load: () => import('./calc.js') },
  check: { about: 'look a pack over and say what is wrong with it', load: () => import('./check.js') },
  'check-backup': { about: 'read a backup whole and say what is in it', load: () => import('./check-backup.js') },
  'check-values': { about: 'hold the safety maths against a file of published values', load: () => import('./check-values.js') },
  draw: { about: 'draw fresh numbers from a family', load: () => import('./draw.js') },
  'new-pack': { about: 'write a small pack to begin with', load: () => import('./new-pack.js') },
  'new-password': { about: 'a link to a new password, for staff who lost theirs or their codes', load: () => import('./new-password.js') },
  outlook: { about: 'the chance of passing, from chances of right answers and a pass mark', load: () => import('./outlook.js') },
  read: { about: 'read a typed answer as the pages do', load: () => import('./read.js') },
  replay: { about: 'rebuild every memory from the record of answers, and say where they differ', load: () => import('./replay.js') },
  restore: { about: 'put a backup back, with the server stopped', load: () => import('./restore-backup.js') },
  rules: { about: 'explain the rules of item writing that check holds a pack against', load: () => import('./rules.js') },
  schedule: { about: 'work out memories from histories of answers', load: () => import('./schedule.js') },
  simulate: { about: 'simulated learners through the planner, against two plain policies', load: () => import('./simulate.js') },
  schema: { about: 'print the format of a pack’s files as a JSON Schema', load: () => import('./schema.js') },
};

const io = {
  out: (text: string): void => void process.stdout.write(`${text}\n`),
  err: (text: string): void => void process.stderr.write(`${text}\n`),
};

function help(): string {
  const lines = Object.entries(commands).map(([name, { about }]) => `  ${name.padEnd(14)}${about}`);
  return ['npx rungwise <command> [--json]', '', ...lines, '', 'Exit status: 0 done, 1 done and the answer is no, 2 could not do it.'].join(
    '\n',
  );
}

async function main([name, ...args]: string[]): Promise<number> {
  if (name === undefined || name === 'help' || name === '--help') {
    io.out(help());
    return name === undefined ? 2 : 0;
  }
  const command = Object.hasOwn(commands, name) ? commands[name] : undefined;
  if (command === undefined) {
    io.err(`There is no command ${JSON.stringify(name.slice(0, 40))}.\n\n${help()}`);
    return 2;
  }
  if (args.includes('--help')) {
    io.out(`npx rungwise ${name}: ${command.about}.\nWithout arguments it says how it is used; README.md tells more.`);
    return 0;
  }
  const { run } = await command.load();
  return await run(args, io);
}

// A reader that closes early, such as head, is no fault.
process.stdout.on('error', (error: NodeJS.ErrnoException) => {
  if (error.code === 'EPIPE') process.exit(0);
  throw error;
});

main(process.argv.slice(2)).then(
  (status) => {
    process.exitCode = status;
  },
  (error: unknown) => {
    io.err(`This is a fault of the program: ${error instanceof Error ? error.message : String(error)}`);
    process.exitCode = 2;
  },
);
