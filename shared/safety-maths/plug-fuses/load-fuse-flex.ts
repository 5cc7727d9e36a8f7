import { calculation } from '../calculation.js';
import { quantity } from '../inputs.js';
import { put } from '../working.js';
import { flexes, rowOf } from './flex-table.js';

/**
 * Whether load, fuse and flex stand in the right order: load ≤ fuse ≤ flex. Currents in A, area in mm² (0.5 to 1.5, as in the table).
 * Source: BS 7671, regulation 433.1.1; IET Code of Practice, table VII.1.
 */
export const loadFuseFlex = calculation({
  id: 'load-fuse-flex',
  title: 'Load, fuse and flex in the right order',
  topic: 'plug-fuses',
  formula: 'I_load ≤ I_fuse ≤ I_flex',
  inputs: {
    load: quantity('running current', 'A', { min: 0, max: 100 }),
    fuse: quantity('rating of the plug fuse', 'A', { min: 0.25, max: 13 }),
    conductor_area: quantity('area of a conductor of the flex', 'mm²', { min: 0.5, max: 1.5 }),
  },
  outputs: { acceptable: null, flex_current: 'A' },
  sources: ['loadFuseCable', 'flexCurrent'],
  validity: 'Ordinary flex on a UK plug, stretched out; a short lead fitted by the maker may follow another rule.',
  foundBy: ['right fuse for a lead', 'fuse too big', 'flex too thin', 'does the fuse protect the cable'],
  regionDependence: 'UK plugs only; elsewhere no fuse in the plug protects the flex',
  caution: 'plug',
  checks: ['load, fuse and flex in order (load <= fuse <= flex)'],
  work({ load, fuse, conductor_area: area }) {
    const { current } = rowOf(flexes, area, 'conductor_area');
    return {
      result: { acceptable: load <= fuse && fuse <= current, flex_current: current },
      steps: [
        `Needed: I_load ≤ I_fuse ≤ I_flex; here ${put(load, 'A')}, ${put(fuse, 'A')} and ${put(current, 'A')} for ${put(area, 'mm²')}.`,
        load <= fuse ? 'The fuse carries the load.' : 'The fuse is too small for the load: it will blow or run hot.',
        fuse <= current ? 'The fuse protects the flex.' : 'The flex is too thin for the fuse: it can burn before the fuse blows.',
      ],
    };
  },
});
