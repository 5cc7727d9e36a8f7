/** The kinds of quantity this syllabus asks for. */
export type QuantityId =
  | 'voltage'
  | 'current'
  | 'power'
  | 'apparent-power'
  | 'resistance'
  | 'charge'
  | 'energy'
  | 'capacitance'
  | 'inductance'
  | 'frequency'
  | 'length'
  | 'area'
  | 'volume'
  | 'time'
  | 'angle'
  | 'temperature'
  | 'ratio'
  | 'level'
  | 'gain'
  | 'power-level'
  | 'sound-level'
  | 'sound-level-c'
  | 'power-density'
  | 'electric-field'
  | 'magnetic-field'
  | 'flux-density'
  | 'resistance-per-length'
  | 'loss-per-length'
  | 'current-density'
  | 'absorption-rate'
  | 'speed'
  | 'rotation'
  | 'mass'
  | 'concentration'
  | 'pressure'
  | 'force';

/** What a page calls the kind of quantity, with its article: "a current". */
export const quantityWords: Readonly<Record<QuantityId, string>> = {
  voltage: 'a voltage',
  current: 'a current',
  power: 'a power',
  'apparent-power': 'an apparent power',
  resistance: 'a resistance',
  charge: 'an electric charge or battery capacity',
  energy: 'an energy',
  capacitance: 'a capacitance',
  inductance: 'an inductance',
  frequency: 'a frequency',
  length: 'a length',
  area: 'an area',
  volume: 'a volume',
  time: 'a time',
  angle: 'an angle',
  temperature: 'a temperature',
  ratio: 'a plain number or share',
  level: 'a ratio',
  gain: 'an antenna gain',
  'power-level': 'a power level',
  'sound-level': 'a sound level',
  'sound-level-c': 'a peak sound level',
  'power-density': 'a power density',
  'electric-field': 'an electric field strength',
  'magnetic-field': 'a magnetic field strength',
  'flux-density': 'a magnetic flux density',
  'resistance-per-length': 'a resistance for each length',
  'loss-per-length': 'a loss for each length',
  'current-density': 'a current density',
  'absorption-rate': 'a specific absorption rate',
  speed: 'a speed',
  rotation: 'a speed of rotation',
  mass: 'a mass',
  concentration: 'a concentration',
  pressure: 'a pressure',
  force: 'a force',
};

/** Quantities made by dividing: "power/area" is what a unit such as W/m² or mW/cm² measures. */
export const quotients: Readonly<Record<string, QuantityId>> = {
  'power/area': 'power-density',
  'voltage/length': 'electric-field',
  'current/length': 'magnetic-field',
  'current/area': 'current-density',
  'resistance/length': 'resistance-per-length',
  'voltage/current/length': 'resistance-per-length',
  'level/length': 'loss-per-length',
  'power/mass': 'absorption-rate',
  'length/time': 'speed',
  'mass/volume': 'concentration',
};

/** Kinds in which people write two units for one number: 5 ft 6 in, 1 h 30 min. */
export const compoundQuantities: ReadonlySet<QuantityId> = new Set(['length', 'time', 'mass']);
