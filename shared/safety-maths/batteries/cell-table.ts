/** One kind of cell. Voltages in V; null where no fixed voltage holds. */
export interface CellKind {
  readonly nominal: number;
  readonly chargeMax: number | null;
  readonly dischargeMin: number | null;
}

/**
 * Kinds of cell by their common name. Source: a cell maker's specification (lithium-ion); a data sheet (charge of lead-acid, 25 °C);
 * the rest from memory.
 */
export const cellKinds = {
  'lithium-ion (cobalt, 3.6 V nominal)': { nominal: 3.6, chargeMax: 4.2, dischargeMin: 2.75 },
  'lithium iron phosphate': { nominal: 3.2, chargeMax: 3.65, dischargeMin: 2.5 },
  'lead-acid': { nominal: 2, chargeMax: 2.4, dischargeMin: 1.75 },
  'nickel-metal hydride': { nominal: 1.2, chargeMax: null, dischargeMin: 1 },
  'nickel-cadmium': { nominal: 1.2, chargeMax: null, dischargeMin: 1 },
  'alkaline, not rechargeable': { nominal: 1.5, chargeMax: null, dischargeMin: null },
} as const satisfies Record<string, CellKind>;
