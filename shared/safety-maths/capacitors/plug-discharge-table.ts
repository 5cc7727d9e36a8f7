/** What a standard lets the pins of a plug hold after it is pulled out. null: the standard, as far as it was read, sets no such figure. */
export interface PlugRule {
  /** Longest time constant, s. */
  readonly time_constant_max: number | null;
  /** Highest voltage, V, and the time after which it holds, s. */
  readonly voltage: number | null;
  readonly time: number | null;
  /** Time for the pins of a plug, s, where it is another than `time`. */
  readonly plug_time: number | null;
  /** Highest charge, C, which will do in place of the voltage. */
  readonly charge: number | null;
  /** Capacitance above which the rule applies, F. */
  readonly capacitance: number | null;
}

const none: PlugRule = { time_constant_max: null, voltage: null, time: null, plug_time: null, charge: null, capacitance: null };

/** Sources: sources/capacitors.ts, one for each standard; IEC 60065 is from memory. */
export const plugRules = {
  'IEC 60950-1 (pluggable type A)': { ...none, time_constant_max: 1, capacitance: 1e-7 },
  'IEC 60950-1 (pluggable type B)': { ...none, time_constant_max: 10, capacitance: 1e-7 },
  'IEC 62368-1': { ...none, voltage: 60, time: 2 },
  'IEC 60335-1 clause 22.5': { ...none, voltage: 34, time: 1 },
  'IEC 60065 clause 9.1.6': { ...none, voltage: 35, time: 2, capacitance: 1e-7 },
  'IEC 61010-1': { ...none, voltage: 60, time: 5, charge: 45e-6 },
  'EN 60204-1': { ...none, voltage: 60, time: 5, plug_time: 1 },
} as const satisfies Record<string, PlugRule>;
