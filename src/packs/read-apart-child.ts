import { readPackFolder } from './read-folder.js';

/** The whole of the child process that `readPackFolderApart` starts: reads the folder it is given and sends what it found. */
const folder = process.argv[2];
if (folder !== undefined && process.send) {
  const { findings, head, coverage } = await readPackFolder(folder);
  process.send({ findings, head, coverage }, () => process.disconnect());
}
