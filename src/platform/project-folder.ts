import { resolve } from 'node:path';

/**
 * The folder that holds package.json, whether this runs from src/ (tests) or from dist/ (the server). Pages, packs and
 * migrations are found from here, wherever the program is started from.
 */
export const projectFolder = resolve(import.meta.dirname, import.meta.filename.endsWith('.ts') ? '../..' : '../../..');
