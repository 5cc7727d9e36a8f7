import { z } from 'zod';

/** The number of a row as addresses and forms carry it: 1 to 999,999,999, written in one way only. */
export const rowNumber = z
  .string()
  .regex(/^[1-9]\d{0,8}$/)
  .transform(Number);
