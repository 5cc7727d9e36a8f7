/** Guideline weights of one zone, kg: close to the body, and with the arms stretched out. */
interface Zone {
  readonly close: number;
  readonly stretched: number;
}

export const people = ['men', 'women'] as const;
export const reaches = ['close to the body', 'at arm’s length'] as const;
export const zoneNames = [
  'above the shoulder',
  'shoulder to elbow',
  'elbow to knuckles',
  'knuckles to mid lower leg',
  'below mid lower leg',
] as const;

/** Lifting filter: where the hands are, from the top downward. Source: INDG143, from memory. */
export const liftingZones: Readonly<Record<(typeof people)[number], Readonly<Record<(typeof zoneNames)[number], Zone>>>> = {
  men: {
    'above the shoulder': { close: 10, stretched: 5 },
    'shoulder to elbow': { close: 20, stretched: 10 },
    'elbow to knuckles': { close: 25, stretched: 15 },
    'knuckles to mid lower leg': { close: 20, stretched: 10 },
    'below mid lower leg': { close: 10, stretched: 5 },
  },
  women: {
    'above the shoulder': { close: 7, stretched: 3 },
    'shoulder to elbow': { close: 13, stretched: 7 },
    'elbow to knuckles': { close: 16, stretched: 10 },
    'knuckles to mid lower leg': { close: 13, stretched: 7 },
    'below mid lower leg': { close: 7, stretched: 3 },
  },
};
