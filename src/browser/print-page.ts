/**
 * Opens the browser's own window for printing. The page prints without it, by the command in the browser's menu, so the button stays
 * hidden until there is a script behind it.
 *
 * Marks in the page: `<button data-print hidden>`, `<form data-print-choice>`.
 */
for (const button of document.querySelectorAll<HTMLButtonElement>('button[data-print]')) {
  button.addEventListener('click', () => window.print());
  button.hidden = false;
}
// What is printed is what stands on the page, so a choice is shown at once.
for (const form of document.querySelectorAll<HTMLFormElement>('form[data-print-choice]'))
  form.addEventListener('change', () => form.requestSubmit());
