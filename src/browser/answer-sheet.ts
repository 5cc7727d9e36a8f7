/**
 * A paper on the screen: saves each choice as it is made, tries again when the connection was away, and counts the time on. Without it
 * the buttons save. Times are the server's: seconds left when the page was made, counted on by a clock that nobody can set.
 */

const seconds = Number(document.querySelector<HTMLElement>('[data-seconds]')?.dataset['seconds'] ?? 'NaN');
const madeAt = performance.now();
const form = document.querySelector<HTMLFormElement>('form[data-answer-sheet]');

/** Left of the time, in seconds. */
const left = (): number => seconds - (performance.now() - madeAt) / 1000;

function countOn(): void {
  const box = document.querySelector<HTMLElement>('[data-left]');
  const said = document.querySelector<HTMLElement>('[data-said]');
  const gone = document.querySelector('[data-gone]');
  const start = Number.parseFloat(gone?.getAttribute('width') ?? '0');
  // Told once each, and politely, to whoever cannot see the clock.
  const told = new Set([10, 5, 1].filter((minutes) => seconds <= minutes * 60));
  const tick = (): void => {
    const minutes = Math.max(0, Math.ceil(left() / 60));
    if (box !== null) box.textContent = `${minutes} minute${minutes === 1 ? '' : 's'} left`;
    gone?.setAttribute('width', `${Math.min(100, 100 - ((100 - start) * Math.max(0, left())) / seconds).toFixed(1)}%`);
    for (const mark of [10, 5, 1])
      if (minutes <= mark && !told.has(mark)) {
        told.add(mark);
        if (said !== null) said.textContent = `${mark} minute${mark === 1 ? '' : 's'} left.`;
      }
    // A little later, so that the server's clock has come there too.
    if (left() <= -1.5) void over();
  };
  setInterval(tick, 1000);
}

let leaving = false;
/** The server hands in what it has; what waits here unsaved came too late. */
async function over(): Promise<void> {
  if (leaving) return;
  leaving = true;
  await Promise.resolve();
  location.assign(document.querySelector<HTMLElement>('[data-over]')?.dataset['over'] ?? '/papers');
}

const field = (name: string): HTMLInputElement | null =>
  form?.querySelector<HTMLInputElement>(`input[type=hidden][name="${name}"]`) ?? null;
const chosen = (place: string): string => form?.querySelector<HTMLInputElement>(`input[name="c${place}"]:checked`)?.value ?? '';
const again = (place: string): boolean => form?.querySelector<HTMLInputElement>(`input[name="a${place}"]`)?.checked ?? false;

/** Questions whose choice the server does not have yet. */
const waiting = new Set<string>();
let sending = false;
let pause = 1000;

function say(words: string): void {
  const box = form?.querySelector<HTMLElement>('[data-saved]');
  if (box !== null && box !== undefined && box.textContent !== words) box.textContent = words;
}

function body(places: readonly string[]): URLSearchParams {
  const data = new URLSearchParams({ _csrf: field('_csrf')?.value ?? '' });
  for (const place of places) {
    data.set(`c${place}`, chosen(place));
    data.set(`w${place}`, field(`w${place}`)?.value ?? '');
    if (again(place)) data.set(`a${place}`, 'on');
    if (field(`b${place}`) !== null) data.set(`b${place}`, 'on');
  }
  return data;
}

async function send(): Promise<void> {
  if (form === null || sending || waiting.size === 0) return;
  sending = true;
  const places = [...waiting];
  const sent = body(places);
  try {
    const answer = await fetch(form.action, { method: 'POST', body: sent, headers: { accept: 'application/json' } });
    if (answer.ok) saved(places, sent);
    else await refused(answer);
    pause = 1000;
  } catch {
    say('Not saved yet: no connection. It is tried again; keep this page open.');
    setTimeout(() => void send(), pause);
    pause = Math.min(15_000, pause * 2);
  } finally {
    sending = false;
  }
  if (waiting.size > 0 && pause === 1000) void send();
}

function saved(places: readonly string[], sent: URLSearchParams): void {
  for (const place of places) {
    const [choice, marked] = [sent.get(`c${place}`) ?? '', sent.has(`a${place}`)];
    const was = field(`w${place}`);
    if (was !== null) was.value = choice;
    markSaved(place, marked);
    if (chosen(place) === choice && again(place) === marked) waiting.delete(place);
    cell(place, choice, marked);
  }
  say('Saved.');
}

function markSaved(place: string, marked: boolean): void {
  const had = field(`b${place}`);
  if (!marked) had?.remove();
  else if (had === null) {
    const made = document.createElement('input');
    Object.assign(made, { type: 'hidden', name: `b${place}`, value: 'on' });
    form?.append(made);
  }
}

async function refused(answer: Response): Promise<void> {
  const told = answer.status === 409 ? ((await answer.json()) as { href?: string }) : null;
  waiting.clear();
  if (told?.href !== undefined) location.assign(told.href);
  else say('Not saved. Press the button below to save it.');
}

/** The answer sheet beside the questions. */
function cell(place: string, choice: string, marked: boolean): void {
  const link = document.querySelector(`[data-cell="${place}"]`);
  if (link === null) return;
  const [letter, words] = [link.querySelector('[data-choice]'), link.querySelector('[data-words]')];
  if (letter !== null) letter.textContent = choice;
  if (words !== null) words.textContent = `${choice === '' ? 'blank' : `answered ${choice}`}${marked ? ', look again' : ''}`;
  const corner = link.querySelector('.corner');
  if (!marked) corner?.remove();
  else if (corner === null) link.append(Object.assign(document.createElement('i'), { className: 'corner' }));
  const letters = [...document.querySelectorAll('[data-choice]')].map(({ textContent }) => textContent);
  const count = letters.filter((each) => each !== '').length;
  for (const [name, number] of [
    ['saved', count],
    ['open', letters.length - count],
  ] as const) {
    const box = document.querySelector(`[data-count="${name}"]`);
    if (box !== null) box.textContent = String(number);
  }
}

if (!Number.isNaN(seconds)) countOn();
form?.addEventListener('change', ({ target }) => {
  const place = target instanceof HTMLInputElement ? /^[ca](\d+)$/.exec(target.name)?.[1] : undefined;
  if (place === undefined) return;
  waiting.add(place);
  void send();
});
// A page that is left with something unsaved asks first; the buttons send all of it themselves.
let pressed = false;
form?.addEventListener('submit', () => (pressed = true));
addEventListener('beforeunload', (event) => {
  if (waiting.size > 0 && !pressed && !leaving) event.preventDefault();
});
addEventListener('online', () => void send());
