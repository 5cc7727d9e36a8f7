/** What 60 Hz current from hand to foot for 1 s does, and at how many mA, from and to. Source: OSHA 3075. */
export const effectsOfOneSecond = {
  'barely felt': [1, 1],
  'slight shock, not painful': [5, 5],
  'cannot let go, women': [6, 25],
  'cannot let go, men': [9, 30],
  'extreme pain, breathing may stop': [50, 150],
  'heart stops pumping': [1000, 4300],
  'heart stops, severe burns': [10000, 10000],
} as const;

/** What 60 Hz current does, and from about how many mA. Source: NIOSH, as quoted in a medical article. */
export const effectsOfCurrent = {
  'barely felt': 1,
  'greatest current an average man can let go': 16,
  'breathing muscles paralysed': 20,
  'ventricular fibrillation': 100,
  'heart stands still, organs damaged': 2000,
} as const;
