import { calculation } from '../calculation.js';
import { quantity } from '../inputs.js';
import { put } from '../working.js';

/**
 * The plug fuse by the 700 W rule of UK guidance: 3 A up to and including 700 W, 13 A above, up to 2990 W (13 A at 230 V).
 * The rule is rounded: 3 A at 230 V is 690 W. Power in W; fuse in A. Source: appliance-testing and home-safety guidance.
 */
export const fuseBy700Watts = calculation({
  id: 'fuse-by-700-watts',
  title: 'Plug fuse by the 700 W rule',
  topic: 'plug-fuses',
  formula: 'up to 700 W: 3 A; above: 13 A',
  inputs: { power: quantity('power on the rating plate', 'W', { min: 0, max: 2990 }) },
  outputs: { fuse: 'A' },
  sources: ['rule700'],
  validity:
    'UK plugs on 230 V to 240 V with plain heating loads; motors and electronic supplies may need the larger fuse, which the maker names.',
  rule: '700 W rule at 230 V',
  foundBy: ['700 watts', '3 amp fuse', '13 amp fuse', 'plug fuse rule'],
  regionDependence: 'UK plugs only',
  caution: 'plug',
  checks: [{ name: 'plug fuse by the 700 W rule', ignore: ['voltage_V'] }],
  work({ power }) {
    const fuse = power <= 700 ? 3 : 13;
    return {
      result: { fuse },
      steps: [
        'The rule of UK guidance: up to 700 W a 3 A fuse, above that a 13 A fuse. It is a rounded rule for 230 V to 240 V.',
        `${put(power, 'W')} is ${power <= 700 ? 'not above' : 'above'} ${put(700, 'W')}: ${put(fuse, 'A')}`,
      ],
    };
  },
});
