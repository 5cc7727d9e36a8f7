import { formatQuantity } from '../format.js';

/** A value put into a formula, with its unit. */
export const put = (value: number, unit: string): string => formatQuantity(value, unit);
/** A value that came out, to four figures. */
export const out = (value: number, unit: string): string => formatQuantity(value, unit, { significant: 4 });
