/** How the units of families are said in a sentence: one, and several. A unit that is not here is printed as it is written. */
const words: ReadonlyMap<string, readonly [one: string, several: string]> = new Map([
  ['V', ['volt', 'volts']],
  ['mV', ['millivolt', 'millivolts']],
  ['kV', ['kilovolt', 'kilovolts']],
  ['A', ['ampere', 'amperes']],
  ['mA', ['milliampere', 'milliamperes']],
  ['W', ['watt', 'watts']],
  ['mW', ['milliwatt', 'milliwatts']],
  ['kW', ['kilowatt', 'kilowatts']],
  ['Wh', ['watt-hour', 'watt-hours']],
  ['kWh', ['kilowatt-hour', 'kilowatt-hours']],
  ['Ah', ['ampere-hour', 'ampere-hours']],
  ['J', ['joule', 'joules']],
  ['ohm', ['ohm', 'ohms']],
  ['milliohm', ['milliohm', 'milliohms']],
  ['microfarad', ['microfarad', 'microfarads']],
  ['MHz', ['megahertz', 'megahertz']],
  ['m', ['metre', 'metres']],
  ['cm', ['centimetre', 'centimetres']],
  ['mm', ['millimetre', 'millimetres']],
  ['mm²', ['square millimetre', 'square millimetres']],
  ['km', ['kilometre', 'kilometres']],
  ['ft', ['foot', 'feet']],
  ['mile', ['mile', 'miles']],
  ['s', ['second', 'seconds']],
  ['min', ['minute', 'minutes']],
  ['h', ['hour', 'hours']],
  ['degree', ['degree', 'degrees']],
  ['W/m²', ['watt per square metre', 'watts per square metre']],
  ['V/m', ['volt per metre', 'volts per metre']],
  ['%', ['per cent', 'per cent']],
  ['dB', ['decibel', 'decibels']],
]);

/** A unit as it is spoken: "amperes" for A, "watts per square metre" for W/m². */
export function unitSpoken(unit: string, value = 2): string {
  const known = words.get(unit);
  return known === undefined ? unit : known[value === 1 ? 0 : 1];
}

/** A number's text with its unit: symbols as they are, units that are words (mile, degree, ohm) in the right number. */
export function withUnit(text: string, unit: string): string {
  if (unit === '') return text;
  const isWord = words.get(unit)?.[0] === unit;
  return `${text} ${isWord ? unitSpoken(unit, Number(text)) : unit}`;
}

/** Whether a story names a unit: in words, or by its symbol after a number or "in" (the word "A" alone is no ampere). */
export function namesUnit(story: string, unit: string): boolean {
  if (unit === '') return true;
  const padded = ` ${story.replace(/[.,;:?!()]/g, ' ')} `;
  const spoken = (words.get(unit) ?? []).some((word) => padded.includes(` ${word} `));
  return (
    spoken ||
    padded.includes(` in ${unit} `) ||
    padded.includes(`} ${unit} `) ||
    [...'0123456789'].some((digit) => padded.includes(`${digit} ${unit} `))
  );
}
