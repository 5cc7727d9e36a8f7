import { readdir, readFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { testApp, type Shown, type TestApp, type Visitor } from '../support/app.js';
import { staffOf } from '../support/staff.js';
import { zip, type ZipEntry } from '../support/zip.js';
import { childrenRunFromSource } from './source-child.js';
import { goodPack } from './temporary-pack.js';

/** A tutor sends a pack: report, what would change, confirm. */

let app: TestApp;
let tutor: Visitor;
beforeAll(async () => {
  app = await testApp();
  ({ tutor } = await staffOf(app));
});
afterAll(() => app.close());

async function pack(change: (name: string, text: string) => string = (_, text) => text): Promise<Buffer> {
  const files = (await readdir(goodPack, { recursive: true, withFileTypes: true })).filter((entry) => entry.isFile());
  const entries = files.map(async (entry): Promise<ZipEntry> => {
    const path = join(entry.parentPath, entry.name);
    return { name: path.slice(goodPack.length + 1), content: change(entry.name, await readFile(path, 'utf8')) };
  });
  return zip(await Promise.all(entries));
}

const send = async (bytes: Buffer): Promise<Shown> => {
  const sent = await tutor.sendFile(await tutor.get('/packs'), '/packs', 'our pack.zip', bytes);
  expect(sent.status).toBe(303);
  return await tutor.get(sent.location ?? '');
};
const versions = () => app.rows<{ slug: string; version: string }>("SELECT slug, version FROM pack WHERE slug <> 'small'");

describe('a pack that a tutor sends', () => {
  childrenRunFromSource();

  it('is shown with its errors at their places, and cannot be added', async () => {
    const page = await send(await pack((name, text) => (name === 'la.yaml' ? text.replace('demand: apply', 'demand: aply') : text)));
    expect(page.html.querySelector('h1')?.text).toContain('1 error');
    expect(page.words).toContain('questions/la.yaml, line 6, column 13');
    expect(page.words).toContain('Did you mean "apply"?');
    expect(page.html.querySelector('form[action$="/add"]')).toBeNull();
    expect(await versions()).toEqual([]);
  });

  it('changes nothing until it is confirmed, and is then asked', async () => {
    const page = await send(await pack());
    expect(page.words).toContain('wobbling-basics 1.2.0 can be added.');
    expect(page.words).toContain('New questions: 2');
    expect(await versions()).toEqual([]);
    expect((await tutor.get('/packs')).words).toContain('our pack.zip');
    const action = page.html.querySelector('form[action$="/add"]')?.getAttribute('action') ?? '';
    const added = await tutor.submit(page, action, {});
    expect((await tutor.get(added.location ?? '')).words).toContain('is in the bank');
    expect(await versions()).toEqual([{ slug: 'wobbling-basics', version: '1.2.0' }]);
    // Pressed twice, it is added once.
    expect((await tutor.submit(page, action, {})).status).toBe(303);
    expect((await tutor.get('/packs')).words).toContain('Added here. wobbling-basics 1.2.0');
  });

  it('says what a new version would change', async () => {
    const page = await send(
      await pack((name, text) => {
        if (name === 'pack.yaml') return text.replace('version: 1.2.0', 'version: 1.3.0');
        return name === 'la.yaml' ? text.replace('revision: 2', 'revision: 3') : text;
      }),
    );
    expect(page.words).toContain('Version 1.2.0 is here now');
    expect(page.words).toContain('people start afresh with these: 1');
  });

  it('shows a changed caution before anybody confirms, and says when the version did not rise', async () => {
    const weaker = await pack((name, text) => (name === 'cautions.yaml' ? text.replace('Stop if', 'Mind whether') : text));
    const page = await send(weaker);
    expect(page.words).toContain('Cautions that change: 1');
    expect(page.words).toContain('bears the same version, 1.2.0');
    expect(page.html.querySelector('form[action$="/add"] button')?.text).toBe('Put this in its place');
  });

  it('says that an older version would be a step back', async () => {
    const page = await send(await pack((name, text) => (name === 'pack.yaml' ? text.replace('version: 1.2.0', 'version: 1.1.9') : text)));
    expect(page.words).toContain('Version 1.2.0 is here now, and this one, 1.1.9, is older');
    expect(page.html.querySelector('form[action$="/add"] button')?.text).toBe('Go back to this older version');
  });

  it('can be thrown away', async () => {
    const page = await send(await pack((name, text) => (name === 'pack.yaml' ? text.replace('version: 1.2.0', 'version: 7.0.0') : text)));
    const action = page.html.querySelector('form[action$="/drop"]')?.getAttribute('action') ?? '';
    expect((await tutor.submit(page, action, {})).location).toBe('/packs');
    expect((await tutor.get(action.replace(/\/drop$/, ''))).status).toBe(404);
  });

  it('says which questions need a new revision', async () => {
    const page = await send(
      await pack((name, text) => {
        if (name === 'pack.yaml') return text.replace('version: 1.2.0', 'version: 1.3.0');
        return name === 'la.yaml' ? text.replace('That is no distance at all.', 'None at all.') : text;
      }),
    );
    expect(page.words).toContain('LA-02-001 cannot be taken: its text changed and its revision did not');
    expect(page.html.querySelector('form[action$="/add"]')).toBeNull();
  });

  it('may not take the place of a pack that comes with the server', async () => {
    const sent = await tutor.sendFile(
      await tutor.get('/packs'),
      '/packs',
      'small.zip',
      await pack((name, text) => (name === 'pack.yaml' ? text.replace('id: wobbling-basics', 'id: small') : text)),
    );
    const page = await tutor.get(sent.location ?? '');
    expect(page.words).toContain('This id belongs to a pack that comes with the server.');
    // Also not by a form that is made by hand.
    const token = (await tutor.get('/packs')).html.querySelector('input[name=_csrf]')?.getAttribute('value') ?? '';
    await tutor.send('POST', `${sent.location ?? ''}/add`, { _csrf: token });
    expect(await app.rows("SELECT title FROM pack WHERE slug = 'small'")).toEqual([{ title: 'Small pack' }]);
  });

  it('is refused with a reason when it is no archive, and when no file was chosen', async () => {
    expect((await send(Buffer.from('not a zip'))).words).toContain('This is no ZIP archive');
    const again = await tutor.sendFile(await tutor.get('/packs'), '/packs', '', Buffer.alloc(0));
    expect(again.status).toBe(422);
    expect(again.words).toContain('Choose the archive first');
    const empty = await tutor.sendFile(await tutor.get('/packs'), '/packs', 'hut.zip', Buffer.alloc(0));
    expect(empty.words).toContain('The file “hut.zip” is empty.');
    expect((await send(zip([{ name: 'photo.jpg', content: 'x' }]))).words).toContain('The archive holds no YAML file');
  });

  it('is refused over 5 MB', async () => {
    const sent = await tutor.sendFile(await tutor.get('/packs'), '/packs', 'big.zip', Buffer.alloc(5_200_000));
    expect(sent.status).toBe(413);
    expect(sent.words).toContain('An archive may have 5 MB.');
  });

  it('takes the place of the earliest that waits when one person has ten', async () => {
    const waiting = () =>
      app.rows<{ count: number }>("SELECT count(*)::int FROM pack_upload WHERE result IS NULL AND file_name LIKE 'hut%'");
    for (let sent = 0; sent < 12; sent += 1) {
      app.clock.forward(1000);
      await tutor.sendFile(await tutor.get('/packs'), '/packs', `hut${sent}.zip`, Buffer.from('not a zip'));
    }
    expect(await waiting()).toEqual([{ count: 10 }]);
    expect(await app.rows("SELECT id FROM pack_upload WHERE file_name = 'hut11.zip'")).toHaveLength(1);
    expect(await app.rows("SELECT id FROM pack_upload WHERE file_name = 'hut0.zip'")).toEqual([]);
    await app.rows("DELETE FROM pack_upload WHERE file_name LIKE 'hut%'");
  });

  it('leaves nothing in the temporary folder, whether it was taken or refused', async () => {
    const left = async () => (await readdir(tmpdir())).filter((name) => name.startsWith('rungwise-pack-'));
    const before = await left();
    await send(await pack());
    await send(zip([{ name: 'pack.yaml', content: 'pack: 3' }]));
    expect((await left()).filter((name) => !before.includes(name))).toEqual([]);
  });

  it('needs the form’s own token', async () => {
    const sent = await tutor.sendFile(null, '/packs', 'pack.zip', await pack());
    expect(sent.status).toBe(403);
  });
});
