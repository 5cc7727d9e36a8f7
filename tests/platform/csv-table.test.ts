import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { readAnswers } from '../../src/analysis/table-csv.js';
import { tableLimits } from '../../src/analysis/table-service.js';
import { decodeFile, readTable } from '../../src/platform/csv-table.js';

/** Tables from strangers: whatever they hold they are read or refused with words, and the worst of them cost little. */

const limits = { rows: 300, columns: 250, rowSize: 16_000, tooMany: 'Send them in two parts.' };

describe('a table', () => {
  it('of any bytes at all is rows within the limits, or a reason', () => {
    const sign = fc.constantFrom(...'",;\t\r\n\'=@\\ \0', 'a', '1', '\ufeff', '""', '__proto__', 'é', '\u2028');
    const bytes = fc.oneof(
      fc.uint8Array({ maxLength: 300 }),
      fc.array(sign, { maxLength: 150 }).map((signs) => new Uint8Array(Buffer.from(signs.join('')))),
    );
    const faults: string[] = [];
    fc.assert(
      fc.property(bytes, (content) => {
        const read = readTable(decodeFile(content), limits);
        if ('why' in read) {
          if (!/^[A-Z].*\.$/s.test(read.why)) faults.push(read.why);
        } else if (read.rows.length > 301 || read.rows.some(({ cells, line }) => cells.length > 250 || line < 1)) faults.push('too much');
      }),
      { seed: 20261128, numRuns: 2000 },
    );
    expect(faults).toEqual([]);
  });

  it('with columns that are called like the insides of objects is a table like any other', () => {
    const answers = 'candidate,__proto__,constructor,prototype\nAda,A,B,A\nBea,B,B,A\n';
    const key = 'item,key,options\n__proto__,A,A B\nconstructor,B,A B\nprototype,A,A B\n';
    const read = readAnswers({ answers, key }, tableLimits);
    expect('responses' in read ? read.responses.questions.length : read).toBe(3);
    expect(({} as { A?: unknown }).A).toBeUndefined();
    expect(Object.keys(Object.prototype)).toEqual([]);
  });
});

/**
 * Why tables need no process of their own: the worst that the limits let in takes less than a quarter of a second of the processor,
 * where a pack may take seconds. Counted in time of the processor, so that a busy machine says the same.
 */
describe('the worst table within the limits', () => {
  const big = tableLimits.bytes;
  const filled = (piece: string): string => piece.repeat(Math.floor(big / Buffer.byteLength(piece)));
  const columns = (count: number, text: string): string => Array.from({ length: count }, () => text).join(',');
  it.each([
    ['commas', filled(',')],
    ['line ends', filled('\n')],
    ['quotation marks', filled('"')],
    ['pairs of quotation marks', filled('""')],
    ['cells in quotation marks', filled('"a",')],
    ['short rows', filled('a\n')],
    ['carriage returns', filled('\r')],
    ['spaces', filled(' ')],
    ['rows of one length', `${columns(100, 'q')}\n`.repeat(2000).slice(0, big)],
    ['semicolons in a header and commas below', `${';'.repeat(200)}\n${filled(',').slice(0, big - 300)}`],
    [
      'zeros and ones, as many as are taken',
      `candidate,${Array.from({ length: 99 }, (_, at) => `q${at}`).join(',')}\n${Array.from({ length: 2000 }, (_, row) => `p${row},${columns(99, row % 3 === 0 ? '1' : '0')}`).join('\n')}`.slice(
        0,
        big,
      ),
    ],
  ])('of %s costs little', (_what, text) => {
    const content = new Uint8Array(Buffer.from(text));
    const [heap, start] = [process.memoryUsage().heapUsed, process.cpuUsage()];
    readAnswers({ answers: content, key: null }, tableLimits);
    const { user, system } = process.cpuUsage(start);
    const grown = process.memoryUsage().heapUsed - heap;
    if (process.env['RUNGWISE_TELL'] !== undefined) console.info(_what, content.length, (user + system) / 1000, 'ms', grown / 1e6, 'MB');
    expect((user + system) / 1000).toBeLessThan(1500);
    expect(grown).toBeLessThan(100e6);
  });
});
