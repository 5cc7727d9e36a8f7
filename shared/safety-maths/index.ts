import { batteries } from './batteries/index.js';
import type { Calculation } from './calculation.js';
import { capacitors } from './capacitors/index.js';
import { electricShock } from './electric-shock/index.js';
import { electricalBasics } from './electrical-basics/index.js';
import { exposure } from './exposure/index.js';
import { heights } from './heights/index.js';
import { noise } from './noise/index.js';
import { outdoors } from './outdoors/index.js';
import { plugFuses } from './plug-fuses/index.js';
import { radio } from './radio/index.js';
import { weather } from './weather/index.js';
import { workshop } from './workshop/index.js';

/** Every calculation there is, topic by topic. A new one is a file in its topic's folder and a line in the folder's index. */
export const calculations: readonly Calculation[] = [
  ...electricalBasics,
  ...plugFuses,
  ...electricShock,
  ...batteries,
  ...capacitors,
  ...heights,
  ...workshop,
  ...radio,
  ...exposure,
  ...noise,
  ...weather,
  ...outdoors,
];

const byId = new Map(calculations.map((one) => [one.id, one]));

/** The calculation of that id, or undefined. */
export const findCalculation = (id: string): Calculation | undefined => byId.get(id);
