/**
 * Steps are moved with two buttons each, in place of choosing a number for each. The page works without: the numbers are then chosen
 * from lists, and these lists stay what is sent.
 *
 * Marks in the page: a list `[data-steps]` whose entries each hold one `select` of places, 1 to the number of entries.
 */
interface Row {
  item: HTMLElement;
  select: HTMLSelectElement;
  letter: string;
}

function setUp(list: HTMLElement): void {
  const rows = [...list.children].flatMap((item): Row[] => {
    const select = item.querySelector('select');
    return item instanceof HTMLElement && select !== null
      ? [{ item, select, letter: item.querySelector('.balloon')?.textContent ?? '' }]
      : [];
  });
  const said = document.createElement('p');
  said.className = 'vh';
  said.setAttribute('role', 'status');
  list.after(said);
  const placed = rows.every(({ select }) => select.value !== '');
  if (placed) rows.sort((a, b) => Number(a.select.value) - Number(b.select.value));
  for (const row of rows) addButtons(row, (by) => move(list, rows, row, by, said));
  list.append(...rows.map(({ item }) => item));
  const lead = list.closest('fieldset')?.querySelector('.lead-in');
  if (!lead) return;
  const moving = document.createElement('p');
  moving.className = 'note lead-in off-paper';
  moving.textContent = 'The steps are mixed up. Move them until the first thing to do stands on top.';
  lead.after(moving);
  // On paper the places are written down.
  lead.classList.add('only-paper');
}

function addButtons({ item, select, letter }: Row, go: (by: -1 | 1) => void): void {
  const choice = select.parentElement;
  if (choice === null) return;
  choice.classList.add('only-paper');
  const mover = document.createElement('p');
  mover.className = 'mover off-paper';
  for (const [by, word] of [
    [-1, 'Sooner'],
    [1, 'Later'],
  ] as const) {
    const button = document.createElement('button');
    button.type = 'button';
    button.className = 'btn';
    button.textContent = word;
    button.setAttribute('aria-label', `${word}: step ${letter}`);
    button.addEventListener('click', () => {
      go(by);
      // Moving an element in the page takes the focus from what is in it.
      button.focus();
    });
    mover.append(button);
  }
  choice.after(mover);
  item.querySelector('label')?.removeAttribute('for');
}

function move(list: HTMLElement, rows: Row[], row: Row, by: -1 | 1, said: HTMLElement): void {
  const from = rows.indexOf(row);
  const to = from + by;
  if (to >= 0 && to < rows.length) {
    rows.splice(from, 1);
    rows.splice(to, 0, row);
    list.append(...rows.map(({ item }) => item));
  }
  rows.forEach(({ select }, index) => {
    select.value = String(index + 1);
  });
  said.textContent = `Step ${row.letter} is in place ${rows.indexOf(row) + 1} of ${rows.length}.`;
}

for (const list of document.querySelectorAll<HTMLElement>('[data-steps]')) setUp(list);
