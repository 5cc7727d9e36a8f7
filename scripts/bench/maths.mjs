// The pure part alone, on one core: draws from the shipped families, and readings of what people type.
import { join } from 'node:path';
import { compileFamily, draw } from '../../dist/src/core/families/draw.js';
import { readPackFolder } from '../../dist/src/packs/index.js';
import { readQuantity } from '../../dist/shared/numeric-answer/parse.js';
import { projectFolder } from '../processes.mjs';
import { answerTasks } from './child.mjs';
import { planWorks } from './plan.mjs';

/** What people type for a quantity, right and wrong, plain and odd: each with the unit that is asked for. */
const typed = [
  ['4.35', 'A'],
  ['4.35 A', 'A'],
  ['4,35', 'A'],
  ['0.5 kW', 'W'],
  ['500 W', 'W'],
  ['1 000,5', 'W'],
  ['1,234', 'W'],
  ['2k2', 'ohm'],
  ['2.2 kΩ', 'ohm'],
  ['100 milliohms', 'ohm'],
  ['1/4', 'm'],
  ['1 1/2 m', 'm'],
  ['150cm', 'm'],
  ['5 ft 6 in', 'm'],
  ['3×10⁻³ A', 'mA'],
  ['−3 dBm', 'dBm'],
  ['75°', 'degree'],
  ['2 h 30 min', 'h'],
  ['about 20 minutes', 'min'],
  ['six', 'A'],
  ['', 'A'],
  ['13 A or 5 A', 'A'],
  ['5 V', 'A'],
  ['0.2 mW/cm2', 'W/m²'],
  ['28 volts per metre', 'V/m'],
];

/** Does `work` for some seconds, a block at a time. @returns how many a second */
function rate(seconds, work, block = 1000) {
  for (let i = 0; i < 2 * block; i += 1) work(i);
  const begun = performance.now();
  let done = 0;
  while (performance.now() - begun < seconds * 1000) {
    for (let i = 0; i < block; i += 1) work(done + i);
    done += block;
  }
  return done / ((performance.now() - begun) / 1000);
}

async function measure({ seconds }) {
  const { pack } = await readPackFolder(join(projectFolder, 'question-packs', 'entry-safety'), { tryFamilies: false });
  const compiled = pack.families.flatMap((family) =>
    ['uk', 'eu', 'na'].map((region) => compileFamily(family, region)).filter((one) => one !== null),
  );
  return [
    { name: 'draws', aim: 20_000, perSecond: rate(seconds, (i) => draw(compiled[i % compiled.length], i + 1)) },
    { name: 'reads', aim: 200_000, perSecond: rate(seconds, (i) => readQuantity(...typed[i % typed.length])) },
    ...planWorks.map(({ name, aim, unit, work }) => ({ name, aim, perSecond: unit * rate(seconds, work, 100) })),
  ];
}

answerTasks({ measure });
