/**
 * Follows a class evening: when the stream says that something changed, the page asks for itself and takes over the parts that differ, so
 * that one code makes the page with and without scripts. What has the focus keeps it. Without a stream it looks again every few seconds;
 * without scripts there is a button for that. On a phone it also sends a choice as it is made, and again until the server has it.
 *
 * Marks in the page: one `[data-events]` with `data-page`, `data-seen` and `data-say`, and `data-poll` where there is no stream; parts `[data-part]` with ids; `[data-said]`;
 * `form[data-choose]` and `[data-own]`. A part with `data-busy` is left alone for the moment.
 */
const lookAgain = 5000;
const streamAgain = 60_000;
/** A whole class is told at one moment: phones spread what they ask for over this time. */
const spread = 500;

const mark = (): HTMLElement | null => document.querySelector<HTMLElement>('[data-events]');
const partsOf = (page: Document): HTMLElement[] => [...page.querySelectorAll<HTMLElement>('[data-part]')];
/** The token of a form is another one on every page. */
const plain = (part: HTMLElement): string => part.outerHTML.replace(/name="_csrf" value="[^"]*"/g, '');

/** The parts as the server last made them, whatever became of them here. */
const made = new Map(partsOf(document).map((part) => [part.id, plain(part)]));
let looking = false;
let again = false;

async function look(): Promise<void> {
  if (looking) {
    again = true;
    return;
  }
  looking = true;
  again = false;
  try {
    const answer = await fetch(mark()?.dataset['page'] ?? location.pathname, { headers: { accept: 'text/html' } });
    // Signed out, or not of this class any more: the page itself says so.
    if ([401, 403, 404].includes(answer.status)) location.reload();
    else if (answer.redirected) location.assign(answer.url);
    else if (answer.ok) take(new DOMParser().parseFromString(await answer.text(), 'text/html'));
  } catch {
    // No connection: the next look or the stream will find it again.
  }
  looking = false;
  if (again) await look();
}

function take(page: Document): void {
  const active = document.activeElement;
  let left: HTMLElement | null = null;
  for (const fresh of partsOf(page)) {
    const here = document.getElementById(fresh.id);
    const html = plain(fresh);
    if (here === null || made.get(fresh.id) === html || here.dataset['busy'] === 'yes') continue;
    made.set(fresh.id, html);
    if (here.contains(active)) left = fresh;
    here.replaceWith(fresh);
  }
  // Others may have something to add to the parts before the focus goes back.
  document.dispatchEvent(new Event('evening-parts'));
  if (left !== null) refocus(active?.id ?? '', left);
  const [own, other] = [mark(), page.querySelector<HTMLElement>('[data-events]')];
  if (own === null || other === null) return;
  const said = other.dataset['say'] ?? '';
  if (said !== '' && said !== own.dataset['say']) document.querySelector('[data-said]')?.replaceChildren(said);
  for (const name of ['events', 'seen', 'say']) own.dataset[name] = other.dataset[name] ?? '';
  document.title = page.title;
  if (own.dataset['events'] === '' && own.dataset['poll'] === undefined) stop();
}

/** The focus goes to what has the same id now, or else to the part in which it was. */
function refocus(id: string, part: HTMLElement): void {
  const same = id === '' ? null : document.getElementById(id);
  if (same === null) part.tabIndex = -1;
  (same ?? part).focus({ preventScroll: true });
}

let source: EventSource | null = null;
let polling: number | undefined;
let over = false;

function follow(): void {
  const address = mark()?.dataset['events'] ?? '';
  if (over || address === '') return;
  const wait = address.startsWith('/evening/') ? spread : 0;
  source = new EventSource(address);
  source.addEventListener('message', ({ data }) => {
    if (data !== mark()?.dataset['seen']) window.setTimeout(() => void look(), Math.random() * wait);
  });
  source.addEventListener('open', () => {
    window.clearInterval(polling);
    polling = undefined;
  });
  source.addEventListener('error', () => {
    if (over) return;
    poll();
    if (source?.readyState === EventSource.CLOSED) window.setTimeout(follow, streamAgain);
  });
}

function poll(): void {
  polling ??= window.setInterval(() => void (document.visibilityState === 'visible' && look()), lookAgain);
}

function stop(): void {
  over = true;
  source?.close();
  window.clearInterval(polling);
}

const say = (words: string): void => document.querySelector('[data-own]')?.replaceChildren(words);
let wanted: string | null = null;
let sending = false;

/** Sends what was pressed last until the server has it or says that it cannot be taken. */
async function choose(form: HTMLFormElement, letter: string): Promise<void> {
  wanted = letter;
  if (sending) return;
  sending = true;
  while (wanted !== null) {
    const choice: string = wanted;
    wanted = null;
    try {
      await send(form, choice);
    } catch {
      say(`${choice} is not saved yet: no connection. It is tried again by itself; keep this page open.`);
      await new Promise((resolve) => window.setTimeout(resolve, 1500));
      wanted ??= choice;
    }
  }
  sending = false;
}

async function send(form: HTMLFormElement, choice: string): Promise<void> {
  const body = new URLSearchParams({ choice });
  for (const name of ['_csrf', 'seen']) body.set(name, form.querySelector<HTMLInputElement>(`[name=${name}]`)?.value ?? '');
  const answer = await fetch(form.action, { method: 'POST', body, headers: { accept: 'application/json' } });
  if (answer.status >= 500) throw new Error('the server is away');
  if (!answer.ok && answer.status !== 409) return say(`${choice} is not saved. Look again with the button below, and choose once more.`);
  const told = (await answer.json()) as { choice: string; words: string };
  if (answer.status === 409) await look();
  for (const button of document.querySelectorAll<HTMLButtonElement>('form[data-choose] button'))
    button.setAttribute('aria-pressed', String(button.value === told.choice));
  say(told.words);
}

document.addEventListener('submit', (event) => {
  const { target, submitter } = event;
  if (!(target instanceof HTMLFormElement && target.matches('[data-choose]') && submitter instanceof HTMLButtonElement)) return;
  event.preventDefault();
  void choose(target, submitter.value);
});
document.addEventListener('evening-look', () => void look());
// A phone that was put away may have missed what came.
document.addEventListener('visibilitychange', () => void (document.visibilityState === 'visible' && !over && look()));
if (mark()?.dataset['poll'] !== undefined) poll();
follow();
