import { calculatorOf } from './calculator-address.js';
import { workingMathML, type CompiledFamily, type Draw } from './families/draw.js';
import { slipWords, type Mark } from './marking.js';

/** What is shown after a numeric question has been answered, in a round and where it is only tried. */

export interface TellTalePart {
  label: string;
  tell: string;
  /** Whether acting on the wrong value could hurt someone. */
  danger: boolean;
}

export interface WorkingPart {
  words: string;
  mathml: string[];
  steps: string[];
  accept: string;
  calculator: { href: string; title: string } | null;
}

/**
 * What an answer betrays; nothing for a right one.
 * @param early whether help is still withheld, before fresh numbers: then no mistake is named; that the figures look right is fair to say
 */
export function tellTaleParts(mark: Mark | null, early: boolean): TellTalePart[] {
  if (mark === null || mark.right) return [];
  if (mark.tellTales.length === 0 && mark.slip !== null) return [{ ...slipWords(mark.slip, early), danger: false }];
  return early ? [] : mark.tellTales.map(({ label, tell, direction }) => ({ label, tell, danger: direction === 'unsafe' }));
}

export const workingPart = (compiled: CompiledFamily, draw: Draw): WorkingPart => ({
  words: draw.formula.words,
  mathml: workingMathML(compiled, draw),
  steps: draw.steps,
  accept: draw.acceptText,
  calculator: calculatorOf(draw),
});
