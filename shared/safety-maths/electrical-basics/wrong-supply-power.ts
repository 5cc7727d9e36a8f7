import { calculation } from '../calculation.js';
import { fromRegion, quantity } from '../inputs.js';
import { out, put } from '../working.js';

/**
 * The power a heater takes on another voltage than it is made for, if its resistance stays the same: P = P_rated × (V / V_rated)².
 * Powers in W, voltages in V r.m.s. (supply: the region's mains if left out); also the times by which the power changes.
 * Source: P = V² / R, SI Brochure.
 */
export const wrongSupplyPower = calculation({
  id: 'wrong-supply-power',
  title: 'A heater or iron on the wrong voltage',
  topic: 'electrical-basics',
  formula: 'P = P_rated × (V / V_rated)²',
  inputs: {
    rated_power: quantity('power on the rating plate', 'W', { min: 0, max: 1e5 }),
    rated_voltage: quantity('voltage on the rating plate', 'V', { min: 1, max: 1000 }),
    voltage: fromRegion(quantity('voltage it is plugged into', 'V', { min: 1, max: 1000 }), 'supplyVoltage'),
  },
  outputs: { power: 'W', times_rated: '' },
  sources: ['si'],
  validity: 'Heaters, irons and elements of fixed resistance, until they burn out; electronic equipment and motors behave otherwise.',
  foundBy: ['bought abroad', 'imported equipment', '120 volt iron on 230 volts', 'wrong mains', 'holiday appliance'],
  regionDependence: 'the mains voltage, when no voltage is given',
  caution: 'plug',
  checks: [],
  work({ rated_power: rated, rated_voltage: plate, voltage }) {
    const times = (voltage / plate) ** 2;
    const power = rated * times;
    return {
      result: { power, times_rated: times },
      steps: [
        'The resistance stays, so the power goes with the square of the voltage.',
        `P = P_rated × (V / V_rated)² = ${put(rated, 'W')} × (${put(voltage, 'V')} / ${put(plate, 'V')})² = ${out(power, 'W')}`,
        times > 1
          ? `That is ${out(times, '')} times the power it is made for: it overheats and can burn somebody or start a fire. Never plug it in.`
          : `That is ${out(times, '')} times the power it is made for. Use only the voltage on the rating plate.`,
      ],
    };
  },
});
