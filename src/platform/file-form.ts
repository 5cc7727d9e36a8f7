import { RungwiseError } from '../core/errors.js';

/** Our largest form with a file has eight fields. */
const mostParts = 30;

/**
 * A form of several parts, by Node's own reader, which takes seconds for a hundred thousand empty ones: they are counted before.
 * @throws RungwiseError `form-not-understood` for a body that is no form, or has more parts than any form of ours
 */
export async function readParts(body: Uint8Array, contentType: string): Promise<FormData> {
  const boundary = /^multipart\/form-data;\s*boundary=(?:"([^"]{1,70})"|([^\s;"]{1,70}))$/i.exec(contentType);
  const mark = Buffer.from(`--${boundary?.[1] ?? boundary?.[2] ?? ''}`);
  const bytes = Buffer.from(body.buffer, body.byteOffset, body.byteLength);
  let marks = 0;
  for (let at = bytes.indexOf(mark); at >= 0 && marks <= mostParts; at = bytes.indexOf(mark, at + mark.length)) marks += 1;
  if (boundary === null || marks > mostParts) throw new RungwiseError('form-not-understood');
  try {
    return await new Response(new Uint8Array(body), { headers: { 'content-type': contentType } }).formData();
  } catch {
    throw new RungwiseError('form-not-understood');
  }
}

/**
 * A form with files. Fields that are not named are passed over, and a field for a file that was left empty counts
 * as none.
 * @throws RungwiseError `form-not-understood` for a body that is no form
 */
export async function readFileForm(
  body: Uint8Array,
  contentType: string,
  { texts, files }: { texts: readonly string[]; files: readonly string[] },
): Promise<Record<string, string | Uint8Array>> {
  const form = await readParts(body, contentType);
  const fields: Record<string, string | Uint8Array> = {};
  for (const name of ['_csrf', ...texts]) {
    const value = form.get(name);
    if (typeof value === 'string') fields[name] = value;
  }
  for (const name of files) {
    const file = form.get(name);
    if (file !== null && typeof file !== 'string' && file.size > 0) fields[name] = new Uint8Array(await file.arrayBuffer());
  }
  return fields;
}
