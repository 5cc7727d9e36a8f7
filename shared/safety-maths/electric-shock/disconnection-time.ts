import { calculation } from '../calculation.js';
import { CalculationInputError, choice, fromRegion, optional, quantity } from '../inputs.js';
import { put } from '../working.js';
import { distributionCircuits, finalCircuits, noTimeUpTo } from './disconnection-table.js';

/**
 * The longest time in which a fault to earth must be cut off. How the supply is earthed (TN or TT), voltage to earth in V a.c. (the
 * region's mains if left out), kind of circuit (final if left out); time in s. 50 V or less is refused for a final circuit: the table sets
 * no time there. Source: BS 7671, table 41.1 and regulations 411.3.2.3 and 411.3.2.4.
 */
export const disconnectionTime = calculation({
  id: 'disconnection-time',
  title: 'How soon a fault must be cut off',
  topic: 'electric-shock',
  formula: 'times of BS 7671, table 41.1',
  inputs: {
    system: choice('how the supply is earthed', ['TN', 'TT']),
    voltage_to_earth: fromRegion(quantity('voltage to earth, a.c.', 'V', { min: noTimeUpTo, max: 1000 }), 'supplyVoltage'),
    circuit: optional(choice('kind of circuit', ['final', 'distribution'])),
  },
  outputs: { time: 's' },
  sources: ['disconnectionTime'],
  validity:
    'Faults to earth on alternating current above 50 V, on the circuits the table is for; special places and direct current have other rules.',
  foundBy: ['disconnection time', '0.4 seconds', 'how fast must a fuse blow', 'TN or TT', 'earth fault time'],
  regionDependence: 'the mains voltage, when none is given; the times are those of British and IEC rules, not of North America',
  caution: 'mains',
  checks: [
    { name: 'greatest disconnection time, final circuit, a.c.', inputs: { circuit: 'final' } },
    { name: 'greatest disconnection time, distribution circuit', inputs: { circuit: 'distribution' } },
  ],
  work({ system, voltage_to_earth: voltage, circuit = 'final' }) {
    const time = (circuit === 'distribution' ? distributionCircuits : rowFor(voltage))[system];
    return {
      result: { time },
      steps: [
        system === 'TN'
          ? 'TN: the supplier’s cable brings an earth to the building, so a fault drives a large current.'
          : 'TT: the building has its own earth electrode, so a fault drives a small current, and an RCD usually has to cut it off.',
        circuit === 'distribution'
          ? `A circuit that feeds another board: the fault must be cut off within ${put(time, 's')}.`
          : `A final circuit at ${put(voltage, 'V')} to earth: the fault must be cut off within ${put(time, 's')}.`,
        'Until then, the metal case of a faulty appliance can be live. Only an electrician’s test shows that a circuit is fast enough.',
      ],
    };
  },
});

function rowFor(voltage: number): { readonly TN: number; readonly TT: number } {
  const row = finalCircuits.find(({ upTo }) => voltage > noTimeUpTo && voltage <= upTo);
  if (row !== undefined) return row;
  throw new CalculationInputError('voltage_to_earth', `the table sets no time up to ${put(noTimeUpTo, 'V')}; give more`);
}
