import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { projectFolder } from './project-folder.js';

/** The program's version, as package.json says it. */
export const version = (JSON.parse(readFileSync(join(projectFolder, 'package.json'), 'utf8')) as { version: string }).version;
