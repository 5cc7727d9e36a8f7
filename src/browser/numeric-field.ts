import type { Reading } from '../../shared/numeric-answer/parse.js';

/**
 * Says beside a field for a number what was understood while it is typed ("read as 0.5 kW = 500 W"), and fills the hidden fields for
 * the time zone. The pages work without it: the server reads what is sent by the same code.
 *
 * Marks in the page: `<input data-reads="W">` (the unit expected, empty for a plain number) with an element `[data-read-as]`
 * in the same `.field` or form; `<input type="hidden" data-time-zone>`. A `.why` in the field is what the server said of the text sent.
 */
const understoodAfter = 300;
/** Half a number is not yet a mistake: wait longer before saying that something is not understood. */
const notUnderstoodAfter = 1200;

/**
 * Keeps the server's words on the text sent in the page while that text stands in the box, and takes them away when it is changed.
 * @returns whether they stand now; always false where they are not about the text ("say how sure you are")
 */
function faultOfText(input: HTMLInputElement, field: Element | null, words: string): () => boolean {
  const fault = field?.querySelector<HTMLElement>('.why') ?? null;
  if (fault === null || fault.textContent?.trim() !== words) return () => false;
  const sent = input.value;
  return () => {
    const stands = input.value === sent;
    // Emptied as well as hidden: a description that is hidden is still read out.
    fault.textContent = stands ? words : '';
    fault.hidden = !stands;
    if (stands) input.setAttribute('aria-invalid', 'true');
    else input.removeAttribute('aria-invalid');
    return stands;
  };
}

async function explain(inputs: readonly HTMLInputElement[]): Promise<void> {
  const [{ readQuantity }, { describeReading }] = await Promise.all([
    import('../../shared/numeric-answer/parse.js'),
    import('../../shared/numeric-answer/describe.js'),
  ]);
  for (const input of inputs) {
    const field = input.closest('.field') ?? input.form;
    const place = field?.querySelector('[data-read-as]');
    if (place === null || place === undefined) continue;
    let waiting: number | undefined;
    const say = (text: string): void => {
      if (place.textContent !== text) place.textContent = text;
    };
    const read = (): Reading => readQuantity(input.value, input.dataset['reads'] ?? '');
    const said = faultOfText(input, field, describeReading(read()));
    const look = (): void => {
      window.clearTimeout(waiting);
      // The page says already what is wrong with the text it came back with: not a second time, but only while that text stands.
      if (said()) return say('');
      if (input.value.trim() === '') return say('');
      const reading = read();
      waiting = window.setTimeout(() => say(describeReading(reading)), reading.understood ? understoodAfter : notUnderstoodAfter);
      // What was said of the text before does not hold for this one.
      if (!reading.understood) say('');
    };
    input.addEventListener('input', look);
    look();
  }
}

function fillTimeZones(): void {
  const zone = Intl.DateTimeFormat().resolvedOptions().timeZone;
  for (const input of document.querySelectorAll<HTMLInputElement>('input[data-time-zone]')) input.value = zone;
}

fillTimeZones();
const fields = [...document.querySelectorAll<HTMLInputElement>('input[data-reads]')];
if (fields.length > 0) void explain(fields);
