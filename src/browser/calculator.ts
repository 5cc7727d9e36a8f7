/**
 * Works a calculator while it is typed: asks the server for the page of what stands in the form and takes its result and drawing over, so
 * that result and working come from the very code that works the page without scripts. The address follows, so it can be shared.
 *
 * Marks in the page: `<form data-live="result">`, the places `#result`, `#drawing` and `[data-live-fault]`.
 */
const waitAfterTyping = 250;

function addressOf(form: HTMLFormElement): string {
  const query = new URLSearchParams();
  for (const [name, value] of new FormData(form)) {
    if (typeof value === 'string' && value.trim() !== '') query.append(name, value);
  }
  return `${new URL(form.action).pathname}?${query.toString()}`;
}

function takeOver(page: Document, selector: string): void {
  const [here, there] = [document.querySelector(selector), page.querySelector(selector)];
  if (here !== null && there !== null && here.innerHTML !== there.innerHTML) here.replaceChildren(...there.childNodes);
}

function live(form: HTMLFormElement): void {
  let waiting: number | undefined;
  let asked: AbortController | null = null;

  async function ask(): Promise<void> {
    asked?.abort();
    asked = new AbortController();
    const address = addressOf(form);
    try {
      const answer = await fetch(address, { signal: asked.signal, headers: { accept: 'text/html' } });
      if (!answer.ok && answer.status !== 422) return;
      const page = new DOMParser().parseFromString(await answer.text(), 'text/html');
      for (const selector of ['#result', '#drawing']) takeOver(page, selector);
      // The fault is said beside the field while typing; the plate at the top would take the focus away.
      document.querySelector('[data-live-fault]')?.replaceChildren();
      window.history.replaceState(null, '', address);
    } catch {
      // Offline or overtaken by the next key: the button still works.
    }
  }

  const soon = (): void => {
    window.clearTimeout(waiting);
    waiting = window.setTimeout(() => void ask(), waitAfterTyping);
  };
  form.addEventListener('input', soon);
}

for (const form of document.querySelectorAll<HTMLFormElement>('form[data-live]')) live(form);
