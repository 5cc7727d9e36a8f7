import { paperKinds } from '../core/papers/sheet.js';

/** What a paper can ask: what one letter answers. There a number is chosen from four and not typed, so luck counts as it does elsewhere. */
export const onPaper = <Q extends { kind: string }>(pool: readonly Q[]): Q[] =>
  pool.flatMap((row) => (paperKinds.has(row.kind) ? [row.kind === 'numeric' ? { ...row, kind: 'single' } : row] : []));
