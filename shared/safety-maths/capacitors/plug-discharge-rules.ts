import { calculation } from '../calculation.js';
import { choice } from '../inputs.js';
import { put } from '../working.js';
import { plugRules } from './plug-discharge-table.js';
import type { PlugRule } from './plug-discharge-table.js';

const standards = Object.keys(plugRules) as (keyof typeof plugRules)[];

/**
 * What a standard lets the pins of a mains plug hold after it is pulled out: longest time constant in s, voltage in V after a time in s,
 * charge in C, and the capacitance in F above which the rule applies; null where none is known. Source: the standards, as others quote
 * them.
 */
export const plugDischargeRules = calculation({
  id: 'plug-discharge-rules',
  title: 'What a pulled plug may still hold',
  topic: 'capacitors',
  formula: 'figures of the standard',
  inputs: { standard: choice('standard the equipment was made to', standards) },
  outputs: { time_constant_max: 's', voltage: 'V', time: 's', plug_time: 's', charge: 'C', capacitance: 'F' },
  sources: ['plugTimeConstant', 'plugAudioVideo', 'plugHousehold', 'plugAudio', 'plugLaboratory', 'plugMachine'],
  validity: 'Figures for makers’ tests, mostly read where others quote them; IEC 62368-1 allows other voltages for small capacitors.',
  rule: 'One standard for each kind of equipment; they differ',
  caution: 'hv',
  checks: [
    'plug discharge limit',
    { name: 'capacitance above which the mains-plug discharge rule applies', inputs: { standard: 'IEC 60950-1 (pluggable type A)' } },
  ],
  work({ standard }) {
    const rule: PlugRule = plugRules[standard];
    return {
      result: { ...rule },
      steps: [...stepsOf(rule), 'These are tests for makers, not leave to touch: keep your fingers off the pins of a plug you pull out.'],
    };
  },
});

function stepsOf({ time_constant_max: constant, voltage, time, plug_time: plugTime, charge, capacitance }: PlugRule): string[] {
  const steps: string[] = [];
  if (constant !== null) steps.push(`The time constant must not be longer than ${put(constant, 's')}.`);
  if (voltage !== null && time !== null)
    steps.push(`After ${put(time, 's')} no more than ${put(voltage, 'V')} may be left${plugTime === null ? '' : ' on live parts'}.`);
  if (plugTime !== null) steps.push(`Bare pins of a plug must be down to it after ${put(plugTime, 's')}.`);
  if (charge !== null) steps.push(`A higher voltage will do if the charge is no more than ${put(charge * 1e6, 'µC')}.`);
  if (capacitance !== null) steps.push(`The rule applies above ${put(capacitance * 1e6, 'µF')}.`);
  return steps;
}
