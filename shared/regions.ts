/** What depends on where a candidate lives: mains voltage, plug or breaker series, conductor colours. The one place for it. */

export type RegionId = 'uk' | 'eu' | 'na';

export interface Region {
  readonly id: RegionId;
  readonly title: string;
  /** Nominal mains voltage, line to neutral, V r.m.s. */
  readonly supplyVoltage: number;
  /** What limits the current of one socket: the fuse in the plug, or the breaker of its circuit. */
  readonly protection: {
    readonly kind: 'plug fuse' | 'circuit-breaker';
    readonly standard: string;
    /** Listed ratings, smallest first, A. */
    readonly series: readonly number[];
  };
  /** What cuts the supply when current leaks through a person, and the current at which it has to, A. */
  readonly shockProtection: { readonly kind: string; readonly trip: number };
  /** Colours of a flexible cord. */
  readonly conductors: { readonly live: string; readonly neutral: string; readonly earth: string };
}

/**
 * uk: 230 V, BS 1363 plug with a BS 1362 fuse. eu: 230 V, IEC 60898-1 breakers B6 to B16, no fuse in the plug.
 * na: 120 V, 15 A and 20 A branch circuits. Shock protection: 30 mA (IEC 61008-1) or class A, 4 mA to 6 mA (UL 943). Flex colours: IEC 60446 (now IEC 60445); North America: usual cord colours.
 */
export const regions: Readonly<Record<RegionId, Region>> = {
  uk: {
    id: 'uk',
    title: 'United Kingdom',
    supplyVoltage: 230,
    protection: { kind: 'plug fuse', standard: 'BS 1362', series: [3, 5, 10, 13] },
    shockProtection: { kind: 'RCD', trip: 0.03 },
    conductors: { live: 'brown', neutral: 'blue', earth: 'green and yellow' },
  },
  eu: {
    id: 'eu',
    title: 'Continental Europe',
    supplyVoltage: 230,
    protection: { kind: 'circuit-breaker', standard: 'IEC 60898-1', series: [6, 10, 13, 16] },
    shockProtection: { kind: 'RCD', trip: 0.03 },
    conductors: { live: 'brown', neutral: 'blue', earth: 'green and yellow' },
  },
  na: {
    id: 'na',
    title: 'North America',
    supplyVoltage: 120,
    protection: { kind: 'circuit-breaker', standard: 'NFPA 70', series: [15, 20] },
    shockProtection: { kind: 'ground-fault interrupter', trip: 0.006 },
    conductors: { live: 'black', neutral: 'white', earth: 'green' },
  },
};

/** The region of that name, or null. */
export const findRegion = (name: string): Region | null => (Object.hasOwn(regions, name) ? regions[name as RegionId] : null);
