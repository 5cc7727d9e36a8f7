import { calculation } from '../calculation.js';
import { choice } from '../inputs.js';
import { out, put } from '../working.js';
import { people } from './lifting-table.js';

/** Guideline forces, kilogram-force: to start or stop a load, and to keep it moving. Source: L23 figures, paragraph 4.1. */
const forces = { men: { start: 20, keep: 10 }, women: { start: 15, keep: 7 } } as const;
/** Newtons in a kilogram-force, exactly. */
const newtons = 9.806_65;

/** The guideline force for pushing or pulling, in kgf (the weight of so many kg). Source as above. */
export const pushOrPull = calculation({
  id: 'push-or-pull',
  title: 'Pushing or pulling a trolley',
  topic: 'workshop',
  formula: 'figures of the lifting guideline',
  inputs: { who: choice('who pushes or pulls', people) },
  outputs: { force: 'kgf', moving_force: 'kgf' },
  sources: ['handlingRules'],
  validity: 'Fit grown-ups on an even floor, hands between knuckles and shoulders; not for slopes, kerbs or rough ground.',
  rule: 'The British guideline for pushing and pulling: above it, look more closely; it is no safe limit',
  foundBy: ['trolley', 'push or pull', 'moving a heavy rack', 'sack truck', 'moving a generator'],
  regionDependence: 'British guidance; other countries use other figures',
  caution: 'lifting',
  checks: ['push or pull force to start or stop a load (kilogram-force)'],
  work({ who }) {
    const { start, keep } = forces[who];
    return {
      result: { force: start, moving_force: keep },
      steps: [
        `For ${who}, to start or stop it: ${put(start, 'kgf')}, about ${out(start * newtons, 'N')}.`,
        `To keep it moving: ${put(keep, 'kgf')}, about ${out(keep * newtons, 'N')}.`,
        'It is the force of your hands, not the weight on the wheels. Push rather than pull, and get help on a slope.',
      ],
    };
  },
});
