import type { HeldRow } from './held-store.js';

/** What was given, as far as it can be said in a line. */
export function givenText(row: HeldRow): string {
  const given = String(row['given'] ?? '');
  if (given === '') return 'not known';
  if (row['kind'] === 'several') {
    const said = [...given].flatMap((one, index) => (one === 't' ? [String.fromCharCode(65 + index)] : []));
    return said.length === 0 ? 'you called no statement true' : `you called ${said.join(', ')} true`;
  }
  if (row['kind'] === 'order') return 'you put steps in order';
  if (row['kind'] === 'pairs') return 'you matched pairs';
  return `you gave “${String(row['chosen'] ?? given)}”`;
}
