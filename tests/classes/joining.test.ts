import jsqr from 'jsqr';
import { afterAll, beforeAll, beforeEach, describe, expect, it } from 'vitest';
import { codeSigns } from '../../src/core/join-code.js';
import { testApp, type Shown, type TestApp, type Visitor } from '../support/app.js';
import { joinWith, makeClass, makeJoinCode, masked, membersOn, onPeople, peopleOf } from '../support/people.js';
import { staffOf } from '../support/staff.js';

/** Candidates join a class by a code, typed or scanned. The clock stands on Wednesday 25 November 2026, 19:00 in London. */

let app: TestApp;
let administrator: Visitor;
let tutor: Visitor;
let id: number;
let code: string;
beforeAll(async () => {
  app = await testApp({ start: '2026-11-25T19:00:00Z' });
  ({ administrator, tutor } = await staffOf(app));
});
afterAll(() => app.close());
beforeEach(async () => {
  await app.rows('DELETE FROM guess');
  id = await makeClass(tutor, 'Thursday beginners', { exam: '2026-12-08', paper: '', meetsOn: '4', meetsAt: '19:30' });
  code = await makeJoinCode(tutor, id);
});

let addresses = 0;
const somebody = (): Visitor => app.visitor(`10.7.${(addresses += 1) >> 8}.${addresses & 255}`);
const members = async (): Promise<string[]> => membersOn(await tutor.get(peopleOf(id)));
const typeCode = async (visitor: Visitor, text: string): Promise<Shown> =>
  visitor.submit(await visitor.get('/join'), '/join', { code: text });
/** A code that is good in form and opens nothing: the last sign of the right one is another. */
const wrong = (): string => code.slice(0, 7) + (codeSigns[(codeSigns.indexOf(code.charAt(7)) + 1) % 31] ?? '');

describe('a visitor with a code', () => {
  it('sees the class, its tutors and what tutors see, and starts and joins in one step', async () => {
    const visitor = somebody();
    const found = await typeCode(visitor, code);
    expect(found.status).toBe(200);
    expect(found.html.querySelector('h1')?.text).toBe('Thursday beginners');
    for (const words of [
      'Tutor: Tessa.',
      'It meets on Thursdays, 19:30.',
      'Exam on Tuesday 8 December 2026.',
      'Your tutors see your answers and how you are getting on. You can leave at any time.',
    ])
      expect(found.words).toContain(words);
    expect(found.html.querySelector('title')?.text).not.toContain(code);
    const sent = await visitor.submit(found, '/join/start', { name: 'Zelda', region: 'eu', timeZone: 'Europe/Berlin' });
    expect([sent.status, sent.location]).toEqual([303, '/phrase?first=yes']);
    const phrase = await visitor.get('/phrase?first=yes');
    const words = phrase.html.querySelectorAll('.slip li').map((word) => word.text.trim());
    expect(words).toHaveLength(7);
    expect(await members()).toEqual(['Zelda']);
    expect(await app.rows(`SELECT region, time_zone FROM person WHERE display_name = 'Zelda'`)).toEqual([
      { region: 'eu', time_zone: 'Europe/Berlin' },
    ]);
    expect((await visitor.get('/my-classes')).words).toContain('Thursday beginners Tutor: Tessa.');
    expect((await visitor.get(await visitor.round('5'))).status).toBe(200);
  });

  it.each([
    ['small letters', (text: string) => text.toLowerCase()],
    ['a space in the middle', (text: string) => `${text.slice(0, 4)} ${text.slice(4)}`],
    ['hyphens and spaces around', (text: string) => ` ${text.slice(0, 3)}-${text.slice(3, 6)}-${text.slice(6)} `],
    ['the whole address', (text: string) => `http://localhost/join/${text}`],
  ])('may type it with %s', async (_name, change) => expect((await typeCode(somebody(), change(code))).status).toBe(200));

  it.each([
    ['', 'Type the code from your tutor'],
    ['K7QW 3MX0', '“0” is in no code. There is no 0, O, 1, I or L in one'],
    ['k7qw', '4 letters and digits were read, and a code has eight.'],
    ['<img src=x>', '“<”, “I”, “=” and other signs are in no code'],
  ])('is told what is wrong with %j, which stays in the box', async (text, why) => {
    const back = await typeCode(somebody(), text);
    expect([back.status, back.html.querySelector('#code')?.getAttribute('value')]).toEqual([422, text]);
    expect(back.html.querySelector('#code-why')?.text).toContain(why);
    expect(back.html.querySelector('img')).toBeNull();
  });

  it('is asked again for a name that does not fit, with the class still on the page', async () => {
    const visitor = somebody();
    const found = await typeCode(visitor, code);
    const back = await visitor.submit(found, '/join/start', { name: ' ', region: 'na' });
    expect([back.status, back.html.querySelector('h1')?.text]).toEqual([422, 'Thursday beginners']);
    expect(back.html.querySelector('.plate.no a')?.getAttribute('href')).toBe('#name');
    expect(back.html.querySelector('input[value=na]')?.hasAttribute('checked')).toBe(true);
    const sent = await visitor.submit(back, '/join/start', { name: 'Zelda' });
    expect(sent.location).toBe('/phrase?first=yes');
  });

  it('is made once when the form is sent twice', async () => {
    const visitor = somebody();
    const found = await typeCode(visitor, code);
    const fields = { name: 'Twice', timeZone: '' };
    const sent = await Promise.all([visitor.submit(found, '/join/start', fields), visitor.submit(found, '/join/start', fields)]);
    expect(sent.map(({ location }) => location).sort()).toEqual(['/', '/phrase?first=yes']);
    expect(await members()).toEqual(['Twice']);
  });

  it('whose code dies while the name is typed loses neither name nor region, and nobody is made', async () => {
    const visitor = somebody();
    const found = await typeCode(visitor, code);
    const fresh = await makeJoinCode(tutor, id);
    const before = await app.rows('SELECT count(*)::int AS n FROM person');
    const back = await visitor.submit(found, '/join/start', { name: 'H. <Vane>', region: 'na' });
    expect([back.status, back.html.querySelector('.plate.no a')?.getAttribute('href')]).toEqual([422, '#code']);
    expect(await app.rows('SELECT count(*)::int AS n FROM person')).toEqual(before);
    const again = await visitor.submit(back, '/join', { code: fresh });
    expect(again.html.querySelector('#name')?.getAttribute('value')).toBe('H. <Vane>');
    expect(again.html.querySelector('input[value=na]')?.hasAttribute('checked')).toBe(true);
  });

  it('is not made when the code dies at the very moment of joining', async () => {
    const visitor = somebody();
    const found = await typeCode(visitor, code);
    // Between the look at the code and the making of the person: closed as the person is written.
    await app.rows(
      `CREATE FUNCTION close_codes() RETURNS trigger AS $$ BEGIN UPDATE study_class SET join_code = NULL, join_until = NULL; RETURN NEW; END $$ LANGUAGE plpgsql`,
    );
    await app.rows('CREATE TRIGGER close_codes BEFORE INSERT ON person EXECUTE FUNCTION close_codes()');
    const back = await visitor.submit(found, '/join/start', { name: 'Late' });
    await app.rows('DROP TRIGGER close_codes ON person');
    await app.rows('DROP FUNCTION close_codes');
    expect(back.status).toBe(422);
    expect(await app.rows(`SELECT FROM person WHERE display_name = 'Late'`)).toEqual([]);
  });
});

describe('a candidate with a code', () => {
  it('joins with one button, and joining again is harmless and said', async () => {
    const odo = await app.candidate('Odo');
    const found = await typeCode(odo, code);
    expect([found.html.querySelector('#name'), found.html.querySelectorAll('form').length]).toEqual([null, 1]);
    expect((await joinWith(odo, code)).words).toContain('You are in the class.');
    await app.rows('UPDATE class_member SET extra_time = 25 WHERE class_id = $1', [id]);
    const joined = await app.rows('SELECT * FROM class_member WHERE class_id = $1', [id]);
    app.clock.forward(60_000);
    const again = await odo.submit(found, '/join/in');
    expect((await odo.get(again.location ?? '')).words).toContain('You are in this class already.');
    expect((await typeCode(odo, code)).words).toContain('You are in this class already.');
    expect(await app.rows('SELECT * FROM class_member WHERE class_id = $1', [id])).toEqual(joined);
  });

  it('may be in several classes, of several tutors', async () => {
    const odo = await app.candidate('Odo');
    const second = await makeClass(administrator, 'Saturday refreshers');
    const other = await makeJoinCode(administrator, second);
    await joinWith(odo, code);
    await joinWith(odo, other);
    const page = await odo.get('/my-classes');
    expect(
      page.html
        .querySelectorAll('section h2')
        .slice(0, 2)
        .map(({ text }) => text),
    ).toEqual(['Thursday beginners', 'Saturday refreshers']);
  });

  it('and another one join at one moment, and so does one who presses twice', async () => {
    const [odo, tansy] = [await app.candidate('Odo'), await app.candidate('Tansy')];
    const [first, second] = [await typeCode(odo, code), await typeCode(tansy, code)];
    const sent = await Promise.all([odo.submit(first, '/join/in'), tansy.submit(second, '/join/in'), odo.submit(first, '/join/in')]);
    expect(sent.map(({ status }) => status)).toEqual([303, 303, 303]);
    expect(await members()).toEqual(['Odo', 'Tansy']);
  });

  it('whose code has died is told so, on the page that asks for another', async () => {
    const odo = await app.candidate('Odo');
    const found = await typeCode(odo, code);
    await onPeople(tutor, id, 'code', { what: 'close', days: '7' });
    const back = await odo.submit(found, '/join/in');
    expect([back.status, back.html.querySelector('.plate.no a')?.text.slice(0, 43)]).toEqual([
      422,
      'No class can be joined by this code. Look a',
    ]);
    expect(await members()).toEqual([]);
  });

  it('cannot slip another person, class or extra time into the form', async () => {
    const [odo, tansy] = [await app.candidate('Odo'), await app.candidate('Tansy')];
    const elsewhere = await makeClass(tutor, 'Elsewhere');
    const [victim] = await app.rows<{ id: number }>('SELECT max(id) AS id FROM person');
    const more = {
      personId: String(victim?.id),
      person: String(victim?.id),
      classId: String(elsewhere),
      class: String(elsewhere),
      role: 'tutor',
      extra_time: '100',
      extraTime: '100',
    };
    await odo.submit(await typeCode(odo, code), '/join/in', more);
    expect(
      await app.rows(
        'SELECT p.display_name, p.role, m.class_id, m.extra_time FROM class_member m JOIN person p ON p.id = m.person_id WHERE class_id IN ($1, $2)',
        [id, elsewhere],
      ),
    ).toEqual([{ display_name: 'Odo', role: 'candidate', class_id: id, extra_time: 0 }]);
    const visitor = somebody();
    await visitor.submit(await typeCode(visitor, code), '/join/start', { ...more, name: 'New', timeZone: '' });
    expect(
      await app.rows(
        `SELECT role, extra_time, class_id FROM person p JOIN class_member m ON m.person_id = p.id WHERE display_name = 'New'`,
      ),
    ).toEqual([{ role: 'candidate', extra_time: 0, class_id: id }]);
    expect((await tansy.get('/my-classes')).words).toContain('You are in no class.');
  });
});

describe('staff', () => {
  it('are told that they cannot join as staff, and cannot', async () => {
    for (const visitor of [tutor, administrator]) {
      expect((await visitor.get('/join')).words).toContain('only candidates join by a code');
      const found = await typeCode(visitor, code);
      expect(found.words).toContain('only candidates join by a code');
      expect(found.html.querySelectorAll('form')).toHaveLength(0);
      const csrf = (await visitor.get('/join')).html.querySelector('input[name=_csrf]')?.getAttribute('value') ?? '';
      expect((await visitor.send('POST', '/join/in', { _csrf: csrf, code })).status).toBe(403);
      expect((await visitor.send('POST', '/join/start', { _csrf: csrf, code, name: 'X' })).location).toBe('/join');
    }
    expect(await members()).toEqual([]);
  });
});

describe('a code that opens nothing', () => {
  /** Every way in which a code can be dead. */
  const deaths: Record<string, () => Promise<string>> = {
    'was never made': async () => wrong(),
    'was closed': async () => {
      await onPeople(tutor, id, 'code', { what: 'close', days: '7' });
      return code;
    },
    'was replaced': async () => {
      await makeJoinCode(tutor, id);
      return code;
    },
    'ran out': async () => {
      await app.rows('UPDATE study_class SET join_until = $2 WHERE id = $1', [id, app.clock.now()]);
      return code;
    },
    'is of a class that has ended': async () => {
      await onPeople(tutor, id, 'end');
      return code;
    },
    // Should such a row ever be there.
    'stands with a class that has ended': async () => {
      await app.rows('UPDATE study_class SET ended_at = $2 WHERE id = $1', [id, app.clock.now()]);
      return code;
    },
  };

  /** What somebody gets who tries it in every way, with the code itself and the tokens made alike. */
  async function answers(dead: string, visitor: Visitor): Promise<string[]> {
    const pages = [await visitor.get(`/join/${dead}`), await typeCode(visitor, dead)];
    const form = await visitor.get('/join');
    const csrf = form.html.querySelector('input[name=_csrf]')?.getAttribute('value') ?? '';
    const fields = { _csrf: csrf, code: dead, name: 'Sly', region: 'uk', timeZone: '', startToken: '0b9f1c1e-6f0a-4a53-9d6f-0d6f2a3f1b77' };
    pages.push(await visitor.send('POST', visitor.cookies.has('rungwise') ? '/join/in' : '/join/start', fields));
    return pages.map((page) => {
      const { date: _, 'set-cookie': __, ...headers } = page.headers;
      return `${page.status} ${JSON.stringify(headers)} ${masked(page).replaceAll(dead, '########')}`;
    });
  }

  it('answers byte for byte alike, whatever it died of, to visitors and candidates', async () => {
    const odo = await app.candidate('Odo');
    const before = await app.rows('SELECT count(*)::int AS n FROM person');
    for (const visitor of [somebody(), odo]) {
      const seen = new Map<string, string[]>();
      for (const [name, die] of Object.entries(deaths)) {
        id = await makeClass(tutor, `Dies: ${name}`);
        code = await makeJoinCode(tutor, id);
        seen.set(name, await answers(await die(), visitor));
      }
      const [first, ...rest] = [...seen.values()];
      expect(first?.map((text) => text.slice(0, 3))).toEqual(['404', '422', '422']);
      for (const other of rest) expect(other).toEqual(first);
      expect(first?.join(' ')).not.toContain('Dies');
    }
    expect(await app.rows('SELECT count(*)::int AS n FROM person')).toEqual(before);
  });
});

describe('guessing', () => {
  it('is limited for an address after a class’s worth of slips, while a right code from elsewhere still joins', async () => {
    const guesser = somebody();
    const form = await guesser.get('/join');
    const statuses: number[] = [];
    for (let tried = 0; tried < 1000; tried += 1) {
      const guess = `2222${codeSigns[tried % 31] ?? ''}${codeSigns[Math.floor(tried / 31) % 31] ?? ''}22`;
      const { status, headers } =
        tried % 2 === 0 ? await guesser.submit(form, '/join', { code: guess }) : await guesser.get(`/join/${guess}`);
      statuses.push(status);
      if (status === 429) expect(Number(headers['retry-after'])).toBeGreaterThan(0);
    }
    // Sixty tries in ten minutes: twice over for each of thirty people in one room.
    expect(statuses.findIndex((status) => status === 429)).toBe(60);
    expect(statuses.slice(60).every((status) => status === 429)).toBe(true);
    // The right code does not help there now, and elsewhere it does.
    expect((await guesser.get(`/join/${code}`)).status).toBe(429);
    expect((await joinWith(await app.candidate('Odo'), code)).words).toContain('You are in the class.');
    app.clock.forward(600_000);
    expect((await guesser.get(`/join/${code}`)).status).toBe(200);
    app.clock.set('2026-11-25T19:00:00Z');
  }, 120_000);

  it('is limited over all addresses together', async () => {
    // As far as three thousand guesses from fifty addresses have come.
    await somebody().get(`/join/${wrong()}`);
    await app.rows('UPDATE guess SET count = 3000 WHERE count = 1');
    expect((await somebody().get(`/join/${wrong()}`)).status).toBe(429);
  });

  it('counts no right code: a hundred may join behind one address', async () => {
    const room = app.visitor('10.6.0.1');
    for (let joined = 0; joined < 100; joined += 1) expect((await room.get(`/join/${code}`)).status).toBe(200);
  }, 60_000);

  it('counts a try before it looks, so that many at once do not slip through', async () => {
    const room = app.visitor('10.6.0.2');
    const statuses = await Promise.all(Array.from({ length: 120 }, async () => (await room.get(`/join/${wrong()}`)).status));
    expect(statuses.filter((status) => status === 404)).toHaveLength(60);
  }, 60_000);
});

describe('the QR code', () => {
  const modulePixels = 8;

  /** Draws the path of a page's QR code as black on white, eight pixels a module, and reads it. */
  function readQr(page: Shown): { text: string | undefined; size: number; quiet: number } {
    const svg = page.html.querySelector('svg.qr, symbol#qr');
    const drawn = page.html.querySelector('symbol#qr') ?? svg;
    const size = Number(drawn?.getAttribute('viewBox')?.split(' ')[2]);
    const width = size * modulePixels;
    const pixels = new Uint8ClampedArray(width * width * 4).fill(255);
    let quiet = size;
    for (const [, x, y, run, back] of drawn
      ?.querySelector('path')
      ?.getAttribute('d')
      ?.matchAll(/M(\d+) (\d+)h(\d+)v1h-(\d+)z/g) ?? []) {
      expect(back).toBe(run);
      quiet = Math.min(quiet, Number(x), Number(y), size - Number(x) - Number(run), size - Number(y) - 1);
      for (let down = 0; down < modulePixels; down += 1)
        for (let across = 0; across < Number(run) * modulePixels; across += 1) {
          const at = ((Number(y) * modulePixels + down) * width + Number(x) * modulePixels + across) * 4;
          pixels.fill(0, at, at + 3);
        }
    }
    return { text: (jsqr as unknown as typeof jsqr.default)(pixels, width, width)?.data, size, quiet };
  }

  it('on the page and on joining slips holds the very address that opens the class, with four light modules around', async () => {
    for (const path of [peopleOf(id), `${peopleOf(id)}/join-slips`]) {
      const { text, quiet } = readQr(await tutor.get(path));
      expect([text, quiet]).toEqual([`http://localhost:80/join/${code}`, 4]);
    }
    const visitor = somebody();
    const found = await visitor.get(new URL(readQr(await tutor.get(peopleOf(id))).text ?? '').pathname);
    expect(found.html.querySelector('h1')?.text).toBe('Thursday beginners');
  });

  it('on return slips holds the address to come back at, and no word of the phrase', async () => {
    const page = await onPeople(tutor, id, 'add', { names: 'Odo' });
    expect(readQr(page)).toMatchObject({ text: 'http://localhost:80/return', quiet: 4 });
  });
});
