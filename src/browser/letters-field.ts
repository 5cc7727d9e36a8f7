/**
 * Shows the letters of an answer sheet in groups of five while they are typed, counts them, and marks those that their question does not
 * have. The page works without: the server reads what is sent.
 *
 * Marks in the page: `<input data-letters="4454 4445">` (how many letters each question has, version by version) in a form with a field
 * `version`; in the same `.field` an `[data-letters-typed]` and an `[data-letters-why]`. A `.why` before the input is what the server said.
 */
const groupSize = 5;
/** A letter just typed may be about to be mended: wait before saying anything of it. */
const sayAfter = 500;

interface Typed {
  letter: string;
  /** The last letter that the question has; null where the letter is among them, or the version is not known. */
  upTo: string | null;
  beyond: boolean;
}

function read(text: string, counts: string | undefined): Typed[] {
  const letters = [...text.replace(/[\s,;]+/g, '')].map((letter) => letter.toUpperCase());
  return letters.map((letter, index) => {
    if (counts === undefined || counts === '') return { letter, upTo: null, beyond: false };
    const count = Number(counts[index] ?? 0);
    const fits = /[-._0\u2010-\u2015\u2212]/.test(letter) || (letter >= 'A' && letter.charCodeAt(0) - 65 < count && letter.length === 1);
    return { letter, upTo: fits || count === 0 ? null : String.fromCharCode(64 + count), beyond: count === 0 };
  });
}

function groups(typed: readonly Typed[], total: number): Node[] {
  const shown: Node[] = [];
  for (let first = 0; first < typed.length; first += groupSize) {
    const group = document.createElement('span');
    const number = document.createElement('small');
    number.textContent = `${first + 1} `;
    group.append(number);
    for (const { letter, upTo, beyond } of typed.slice(first, first + groupSize)) {
      const sign = document.createElement(upTo === null && !beyond ? 'span' : 'mark');
      sign.textContent = letter;
      group.append(sign);
    }
    shown.push(group);
  }
  const count = document.createElement('b');
  count.textContent = total === 0 ? String(typed.length) : `${typed.length} of ${total}`;
  return [...shown, count];
}

function words(typed: readonly Typed[], total: number): string {
  const wrong = typed.flatMap(({ letter, upTo }, index) =>
    upTo === null ? [] : [`question ${index + 1} has no ${letter} (A to ${upTo})`],
  );
  const more = total > 0 && typed.length > total ? [`${typed.length - total} too many`] : [];
  const said = [...wrong.slice(0, 3), ...(wrong.length > 3 ? [`and ${wrong.length - 3} more`] : []), ...more].join('; ');
  return said === '' ? '' : `${said[0]?.toUpperCase() ?? ''}${said.slice(1)}.`;
}

function setUp(input: HTMLInputElement): void {
  const field = input.closest('.field');
  const version = input.form?.elements.namedItem('version');
  const [place, why] = [field?.querySelector('[data-letters-typed]'), field?.querySelector('[data-letters-why]')];
  if (!(version instanceof HTMLInputElement) || !place || !why) return;
  const versions = (input.dataset['letters'] ?? '').split(' ');
  const served = field?.querySelector<HTMLElement>('.why:not([data-letters-why])') ?? null;
  const servedWords = served?.textContent ?? '';
  const sent = `${version.value} ${input.value}`;
  let waiting: number | undefined;

  const look = (): void => {
    const counts = versions[Number(version.value) - 1];
    const total = counts?.length ?? 0;
    const typed = read(input.value, counts);
    place.replaceChildren(...(typed.length === 0 ? [] : groups(typed, total)));
    window.clearTimeout(waiting);
    const stands = served !== null && `${version.value} ${input.value}` === sent;
    if (served !== null) {
      // Emptied as well as hidden: a description that is hidden is still read out.
      served.textContent = stands ? servedWords : '';
      served.hidden = !stands;
      if (stands) input.setAttribute('aria-invalid', 'true');
      else input.removeAttribute('aria-invalid');
    }
    // What the server said of the very same text is not said a second time.
    const said = words(typed, total);
    if (said === '' || stands) return why.replaceChildren();
    waiting = window.setTimeout(() => {
      if (why.textContent !== said) why.textContent = said;
    }, sayAfter);
  };

  input.addEventListener('input', look);
  version.addEventListener('input', look);
  look();
}

for (const input of document.querySelectorAll<HTMLInputElement>('input[data-letters]')) setUp(input);
