import { RungwiseError } from '../core/errors.js';

/**
 * A form with files, by Node's own reader. Fields that are not named are passed over, and a field for a file that was left empty counts
 * as none.
 * @throws RungwiseError `form-not-understood` for a body that is no form
 */
export async function readFileForm(
  body: Uint8Array,
  contentType: string,
  { texts, files }: { texts: readonly string[]; files: readonly string[] },
): Promise<Record<string, string | Uint8Array>> {
  let form: FormData;
  try {
    form = await new Response(new Uint8Array(body), { headers: { 'content-type': contentType } }).formData();
  } catch {
    throw new RungwiseError('form-not-understood');
  }
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
