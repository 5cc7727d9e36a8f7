import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { RungwiseError } from '../../src/core/errors.js';
import { readFileForm } from '../../src/platform/file-form.js';

/** Forms with files, as browsers send them (RFC 7578) and as nobody should. */

/** As long as a browser's: Node's reader takes no shorter one. */
const mark = `--${'-'.repeat(26)}b`;
const type = 'multipart/form-data; boundary=--------------------------b';
const fields = { texts: ['text'], files: ['file'] };
const part = (name: string, content: string, file = ''): string =>
  `${mark}\r\ncontent-disposition: form-data; name="${name}"${file === '' ? '' : `; filename="${file}"`}\r\n\r\n${content}\r\n`;
const read = (body: string, contentType = type): ReturnType<typeof readFileForm> => readFileForm(Buffer.from(body), contentType, fields);

describe('a form with files', () => {
  it('is read by its known fields alone', async () => {
    const form = `${part('_csrf', 't')}${part('text', 'words')}${part('role', 'admin')}${part('file', 'a,b', 'x.csv')}${mark}--\r\n`;
    expect(await read(form)).toEqual({ _csrf: 't', text: 'words', file: new Uint8Array(Buffer.from('a,b')) });
  });

  it('does not reach the prototype of objects by its fields', async () => {
    await read(`${part('__proto__', 'x')}${part('__proto__[polluted]', 'x')}${part('constructor', 'x', 'y')}${mark}--\r\n`);
    expect(({} as { polluted?: unknown }).polluted).toBeUndefined();
  });

  it.each([
    ['a hundred thousand parts', part('file', '', 'x').repeat(80_000)],
    ['a hundred thousand texts', part('text', '').repeat(90_000)],
    ['nothing but marks', mark.repeat(160_000)],
  ])('of %s is refused before it is taken apart', async (_what, body) => {
    const start = process.cpuUsage();
    await expect(read(`${body}${mark}--\r\n`)).rejects.toThrow(RungwiseError);
    expect(process.cpuUsage(start).user / 1000).toBeLessThan(500);
  });

  it.each([
    'multipart/form-data',
    'multipart/form-data; boundary=',
    'multipart/form-data; boundary=""',
    // A mark within a mark, so that others would be counted than are read.
    `multipart/form-data; a="; boundary=x"; boundary=${mark.slice(2)}`,
    `multipart/form-data; boundary=${'b'.repeat(5000)}`,
  ])('is refused with the kind %j', async (contentType) => {
    await expect(read(`${part('text', 'x')}${mark}--\r\n`, contentType.slice(0, 400))).rejects.toThrow(RungwiseError);
  });

  it('is read or refused, whatever is in it', async () => {
    const scrap = fc.constantFrom(
      mark,
      '\r\n',
      `${mark}--`,
      'content-disposition: form-data',
      '; name="text"',
      '; filename="',
      '"',
      '\0',
      'a',
      ': ',
      '--',
      '\r\n\r\n',
    );
    await fc.assert(
      fc.asyncProperty(fc.array(scrap, { maxLength: 60 }), async (scraps) => {
        const outcome = await read(scraps.join('')).catch((error: unknown) => error);
        if (outcome instanceof Error && !(outcome instanceof RungwiseError)) throw outcome;
      }),
      { seed: 20261128, numRuns: 500 },
    );
    expect(await read(`${mark}--\r\n`).catch(() => null)).toBeDefined();
  });
});
