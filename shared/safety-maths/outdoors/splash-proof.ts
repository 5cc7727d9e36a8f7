import { calculation } from '../calculation.js';
import { choice } from '../inputs.js';
import { ipCodes, solids, waters } from './ip-code-table.js';

/**
 * Whether an enclosure is splash-proof: second numeral of its IP code 4 or more; an X says nothing, so it does not count. Also what each
 * numeral means, in words, null for an X. Source: IEC 60529.
 */
export const splashProof = calculation({
  id: 'splash-proof',
  title: 'Reading an IP code: is it splash-proof',
  topic: 'outdoors',
  formula: 'second numeral ≥ 4',
  inputs: { ip_code: choice('IP code', ipCodes) },
  outputs: { splash_proof: null, solids: null, water: null },
  sources: ['ipCode'],
  validity: 'New, closed and undamaged enclosures; a joined plug and socket is only as good as the worse of the two.',
  foundBy: ['IP44', 'IP rating', 'waterproof', 'outdoor socket', 'rain', 'IP65'],
  caution: 'mains',
  checks: ['is an enclosure splash-proof'],
  work({ ip_code: code }) {
    const [first = 'X', second = 'X'] = [...code.slice(2)];
    // Number('X') is not a number, so an X is never 4 or more, and no row of a table.
    const [solid, water] = [solids[Number(first)]?.words ?? null, waters[Number(second)] ?? null];
    const proof = Number(second) >= 4;
    return {
      result: { splash_proof: proof, solids: solid, water },
      steps: [
        `First place ${first}: ${solid === null ? 'solids are not stated' : first === '0' ? 'solids are not kept out' : `keeps out ${solid}`}.`,
        `Second place ${second}: ${water === null ? 'water is not stated' : second === '0' ? 'water is not kept out' : `stands ${water}`}.`,
        proof ? 'Second numeral ≥ 4: splash-proof while it is closed and sound.' : 'Not splash-proof: keep it under cover and dry.',
      ],
    };
  },
});
