/** Times in s at a multiple of the rated residual current; least: it must not open sooner, null where no shortest time is set. */
interface RcdTimes {
  readonly multiple: number;
  readonly least: number | null;
  readonly most: number;
}

/** Up to this share of its rating an RCD must not trip. Source: IEC 61008-1 and IEC 61009-1. */
export const noTrip = 0.5;

/** IEC 61008-1 and IEC 61009-1, tables 1 and 2; the rows of twice the rating are from memory. Smallest multiple first. */
export const rcdTimes: Readonly<Record<'general' | 'selective', readonly RcdTimes[]>> = {
  general: [
    { multiple: 1, least: null, most: 0.3 },
    { multiple: 2, least: null, most: 0.15 },
    { multiple: 5, least: null, most: 0.04 },
  ],
  selective: [
    { multiple: 1, least: 0.13, most: 0.5 },
    { multiple: 2, least: 0.06, most: 0.2 },
    { multiple: 5, least: 0.05, most: 0.15 },
  ],
};
