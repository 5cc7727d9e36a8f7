import { describe, expect, it } from 'vitest';
import { findRegion, regions } from '../../shared/regions.js';

describe('the regions', () => {
  it('hold mains voltage and listed ratings', () => {
    // BS 1362 and IEC 60898-1 ratings, NFPA 70 branch circuits; nominal voltages of IEC 60038.
    expect(Object.values(regions).map(({ id, supplyVoltage, protection }) => [id, supplyVoltage, protection.series])).toEqual([
      ['uk', 230, [3, 5, 10, 13]],
      ['eu', 230, [6, 10, 13, 16]],
      ['na', 120, [15, 20]],
    ]);
  });

  it('are found by their names only', () => {
    expect([findRegion('na')?.supplyVoltage, findRegion('NA'), findRegion('toString'), findRegion('')]).toEqual([120, null, null, null]);
  });
});
