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
    if (left() <= -1.5) over();
  };
  setInterval(tick, 1000);
}

let leaving = false;
/** The server hands in what it has; what waits here unsaved came too late. */
function over(): void {
  if (leaving) return;
  leaving = true;
  location.assign(document.querySelector<HTMLElement>('[data-over]')?.dataset['over'] ?? '/papers');
}

const field = (name: string): HTMLInputElement | null =>
  form?.querySelector<HTMLInputElement>(`input[type=hidden][name="${name}"]`) ?? null;
const chosen = (place: string): string => form?.querySelector<HTMLInputElement>(`input[name="c${place}"]:checked`)?.value ?? '';
const again = (place: string): boolean => form?.querySelector<HTMLInputElement>(`input[name="a${place}"]`)?.checked ?? false;

interface Unsaved {
  choice: string;
  marked: boolean;
  /** As the page was loaded with. */
  was: string;
  wasMarked: boolean;
}

/** Questions whose choice the server does not have yet. A copy lies in the browser, in case the page is closed without a connection. */
const waiting = new Map<string, Unsaved>();
const shelf = `rungwise ${form?.action ?? ''}`;
let sending = false;
/** No connection; or the server would not take it, and the button must. */
let failing = false;
let stopped = false;
let pause = 1000;

function keepCopy(): void {
  try {
    if (waiting.size === 0) localStorage.removeItem(shelf);
    else localStorage.setItem(shelf, JSON.stringify([...waiting]));
  } catch {
    // No room, or not allowed: then only the page itself keeps them.
  }
}

function takeCopy(): void {
  try {
    for (const [place, kept] of JSON.parse(localStorage.getItem(shelf) ?? '[]') as [string, Unsaved][]) {
      waiting.set(place, kept);
      const box = form?.querySelector<HTMLInputElement>(`input[name="c${place}"][value="${kept.choice}"]`);
      if (box instanceof HTMLInputElement) box.checked = true;
    }
  } catch {
    localStorage.removeItem(shelf);
  }
}

function say(words: string, bad = false): void {
  const box = form?.querySelector<HTMLElement>('[data-saved]');
  if (box && box.textContent !== words) box.textContent = words;
  box?.classList.toggle('bad', bad);
}

function body(batch: ReadonlyMap<string, Unsaved>): URLSearchParams {
  const data = new URLSearchParams({ _csrf: field('_csrf')?.value ?? '' });
  for (const [place, { choice, marked, was, wasMarked }] of batch) {
    data.set(`c${place}`, choice);
    data.set(`w${place}`, was);
    if (marked) data.set(`a${place}`, 'on');
    if (wasMarked) data.set(`b${place}`, 'on');
  }
  return data;
}

async function send(): Promise<void> {
  if (form === null || sending || waiting.size === 0) return;
  sending = true;
  const batch = new Map(waiting);
  try {
    const answer = await fetch(form.action, { method: 'POST', body: body(batch), headers: { accept: 'application/json' } });
    failing = false;
    if (answer.ok) saved(batch);
    else await refused(answer);
    pause = 1000;
  } catch {
    failing = true;
    say('Not saved yet: no connection. It is tried again by itself; keep this page open.', true);
    setTimeout(() => void send(), pause);
    pause = Math.min(15_000, pause * 2);
  } finally {
    sending = false;
  }
  if (waiting.size > 0 && !failing && !stopped) void send();
}

function saved(batch: ReadonlyMap<string, Unsaved>): void {
  for (const [place, { choice, marked }] of batch) {
    const was = field(`w${place}`);
    if (was !== null) was.value = choice;
    markSaved(place, marked);
    const now = waiting.get(place);
    if (now !== undefined && now.choice === choice && now.marked === marked) waiting.delete(place);
    else if (now !== undefined) waiting.set(place, { ...now, was: choice, wasMarked: marked });
    cell(place, choice, marked);
  }
  keepCopy();
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
  if (told?.href === undefined) {
    stopped = true;
    return say('Not saved. Press the button below to save it.', true);
  }
  waiting.clear();
  keepCopy();
  location.assign(told.href);
}

/** The answer sheet beside the questions. */
function cell(place: string, choice: string, marked: boolean): void {
  const link = document.querySelector(`[data-cell="${place}"]`);
  if (link === null) return;
  const [letter, words] = [link.querySelector('[data-choice]'), link.querySelector('[data-words]')];
  if (letter) letter.textContent = choice;
  if (words) words.textContent = `${choice === '' ? 'blank' : `answered ${choice}`}${marked ? ', look again' : ''}`;
  const corner = link.querySelector('.corner');
  if (!marked) corner?.remove();
  else if (corner === null) link.append(Object.assign(document.createElement('i'), { className: 'corner' }));
  const letters = [...document.querySelectorAll('[data-choice]')].map(({ textContent }) => textContent);
  const count = letters.filter((each) => each !== '').length;
  const show = (name: string, number: number): void => document.querySelector(`[data-count="${name}"]`)?.replaceChildren(String(number));
  show('saved', count);
  show('open', letters.length - count);
}

if (!Number.isNaN(seconds)) countOn();
form?.addEventListener('change', ({ target }) => {
  const place = target instanceof HTMLInputElement ? /^[ca](\d+)$/.exec(target.name)?.[1] : undefined;
  if (place === undefined) return;
  const before = { was: field(`w${place}`)?.value ?? '', wasMarked: field(`b${place}`) !== null };
  waiting.set(place, { choice: chosen(place), marked: again(place), ...before });
  keepCopy();
  stopped = false;
  void send();
});
// A page that is left with something unsaved asks first; the buttons send all of it themselves, where there is a connection.
let pressed = false;
form?.addEventListener('submit', (event) => {
  if (waiting.size > 0 && (failing || !navigator.onLine)) {
    event.preventDefault();
    say('No connection. Your answer is kept here: stay on this page, and press again when it says “Saved.”', true);
    void send();
  } else pressed = true;
});
addEventListener('beforeunload', (event) => {
  if (waiting.size > 0 && !pressed && !leaving) event.preventDefault();
});
addEventListener('online', () => void send());
takeCopy();
void send();
