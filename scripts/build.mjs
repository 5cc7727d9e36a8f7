// npm run build: everything that npm start does before it starts.
import { setUp } from './set-up.mjs';
import { runScript } from './steps.mjs';

await runScript(() => setUp());
