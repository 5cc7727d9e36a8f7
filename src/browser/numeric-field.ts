/**
 * Says beside a field for a number what was understood while it is typed ("read as 0.5 kW = 500 W"), and fills the hidden fields for
 * the time zone. The pages work without it: the server reads what is sent by the same code.
 *
 * Marks in the page: `<input data-reads="W">` (the unit expected, empty for a plain number) with an element `[data-read-as]`
 * in the same `.field` or form; `<input type="hidden" data-time-zone>`.
 */
const understoodAfter = 300;
/** Half a number is not yet a mistake: wait longer before saying that something is not understood. */
const notUnderstoodAfter = 1200;

async function explain(inputs: readonly HTMLInputElement[]): Promise<void> {
  const [{ readQuantity }, { describeReading }] = await Promise.all([
    import('../../shared/numeric-answer/parse.js'),
    import('../../shared/numeric-answer/describe.js'),
  ]);
  for (const input of inputs) {
    const place = (input.closest('.field') ?? input.form)?.querySelector('[data-read-as]');
    if (place === null || place === undefined) continue;
    let waiting: number | undefined;
    const say = (text: string): void => {
      if (place.textContent !== text) place.textContent = text;
    };
    const look = (): void => {
      window.clearTimeout(waiting);
      if (input.value.trim() === '') return say('');
      const reading = readQuantity(input.value, input.dataset['reads'] ?? '');
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
