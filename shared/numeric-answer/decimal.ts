/** A number times ten to a power, as exact as the machine allows. */
export function shiftDecimal(value: number, places: number): number {
  const [mantissa = '', exponent = '0'] = String(value).split('e');
  return Number.isFinite(value) ? Number(`${mantissa}e${Number(exponent) + places}`) : value;
}
