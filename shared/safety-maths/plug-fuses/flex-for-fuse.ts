import { calculation } from '../calculation.js';
import { quantity } from '../inputs.js';
import { put } from '../working.js';
import { flexes, thinnestFor } from './flex-table.js';

/**
 * The thinnest flex that a plug fuse protects: the first in the table rated at least as high as the fuse. Fuse in A, up to 13 A; area in
 * mm², flex current in A. Source: IET Code of Practice, table VII.1; smallest areas for 3 A and 13 A fuses on a testers' page.
 */
export const flexForFuse = calculation({
  id: 'flex-for-fuse',
  title: 'Thinnest flex for a plug fuse',
  topic: 'plug-fuses',
  formula: 'I_flex ≥ I_fuse',
  inputs: { fuse: quantity('rating of the plug fuse', 'A', { min: 0.25, max: 13 }) },
  outputs: { conductor_area: 'mm²', flex_current: 'A' },
  sources: ['flexCurrent', 'flexForFuse'],
  validity: 'A flex that is replaced on a UK plug; a short lead fitted by the maker may be thinner, and then the maker’s fuse holds.',
  foundBy: ['flex size', 'replace a flex', 'new mains lead', 'cable for 13 amps', 'fuse protects the cable'],
  regionDependence: 'UK plugs only; elsewhere no fuse in the plug protects the flex',
  caution: 'plug',
  checks: ['smallest flex for a plug fuse'],
  work({ fuse }) {
    const flex = thinnestFor(fuse);
    return {
      result: { conductor_area: flex?.area ?? null, flex_current: flex?.current ?? null },
      steps: [
        `The fuse protects the flex, so the flex must stand the fuse: ${flexes.map((one) => `${put(one.area, 'mm²')} ${put(one.current, 'A')}`).join(', ')}.`,
        flex === null ? 'None is thick enough.' : `The first rated at least ${put(fuse, 'A')}: ${put(flex.area, 'mm²')}`,
      ],
    };
  },
});
