/**
 * Hands are counted with two buttons for each letter and saved as they are counted. Without it numbers are typed, and go with whichever
 * button is pressed.
 *
 * Marks in the page: `form[data-hands]` with boxes in `.hands li`, a hidden field `was`, and `[data-saved]`.
 */
const saveAfter = 600;
const most = 999;
let waiting: number | undefined;

const form = (): HTMLFormElement | null => document.querySelector<HTMLFormElement>('form[data-hands]');
const boxes = (): HTMLInputElement[] => [...(form()?.querySelectorAll<HTMLInputElement>('.hands input') ?? [])];

function soon(): void {
  window.clearTimeout(waiting);
  const part = form()?.querySelector<HTMLElement>('[data-part]:has(.hands)');
  if (part) part.dataset['busy'] = 'yes';
  waiting = window.setTimeout(() => void save(), saveAfter);
}

async function save(): Promise<void> {
  const own = form();
  if (own === null) return;
  const fields = [...new FormData(own)].flatMap(([name, value]) => (typeof value === 'string' ? [[name, value]] : []));
  const typed = boxes().map(({ value }) => value.trim());
  const said = own.querySelector('[data-saved]');
  try {
    const body = new URLSearchParams([...fields, ['do', 'hands']]);
    const answer = await fetch(own.action, { method: 'POST', body, headers: { accept: 'application/json' } });
    const told = (await answer.json()) as { saved: boolean; words: string };
    const was = own.querySelector<HTMLInputElement>('[name=was]');
    if (told.saved && was !== null) was.value = typed.join(',');
    said?.replaceChildren(told.words);
  } catch {
    said?.replaceChildren('Not saved yet. It goes with the next button that you press.');
  }
  delete own.querySelector<HTMLElement>('[data-busy]')?.dataset['busy'];
  document.dispatchEvent(new Event('evening-look'));
}

function button(box: HTMLInputElement, by: 1 | -1): HTMLButtonElement {
  const made = document.createElement('button');
  made.type = 'button';
  made.className = 'btn';
  made.id = `${box.id}-${by === 1 ? 'more' : 'less'}`;
  made.textContent = by === 1 ? '+' : '−';
  made.setAttribute('aria-label', `One hand ${by === 1 ? 'more' : 'less'} for ${box.id.slice(-1)}`);
  made.addEventListener('click', () => {
    const count = Number(box.value.trim() || '0') + by;
    if (!(count >= 0 && count <= most)) return;
    box.value = String(count);
    soon();
  });
  return made;
}

const question = (): string => form()?.querySelector<HTMLInputElement>('[name=seen]')?.value ?? '';
let at = question();

function dress(): void {
  if (at !== question()) form()?.querySelector('[data-saved]')?.replaceChildren();
  at = question();
  for (const box of boxes()) {
    if (box.nextElementSibling !== null) continue;
    box.before(button(box, -1));
    box.after(button(box, 1));
    box.addEventListener('input', soon);
  }
}

document.addEventListener('evening-parts', dress);
dress();
