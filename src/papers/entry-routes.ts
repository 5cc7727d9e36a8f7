import type { FastifyInstance, FastifyReply, FastifyRequest } from 'fastify';
import { z } from 'zod';
import { known, RungwiseError } from '../core/errors.js';
import { counted } from '../core/words.js';
import { decodeFile } from '../platform/csv-table.js';
import { readFileForm } from '../platform/file-form.js';
import { mostBytes, readResults, writeResults } from './entry-csv.js';
import * as forms from './entry-forms.js';
import { csvPage, enterPage, formOf, freshForm, savedWords, type EnterState } from './entry-page.js';
import type { EntryService, EntryView } from './entry-service.js';
import { paperParams } from './forms.js';
import type { SettingService } from './set-service.js';

/** Results of papers that were sat on paper: one sheet after another, or a whole table. */

const config = { access: 'set-papers' as const };

interface Papers {
  entry: EntryService;
  setting: SettingService;
}

export function entryRoutes(app: FastifyInstance, { entry, setting }: Papers): void {
  oneByOne(app, entry);
  removing(app, setting);
  readingTables(app, entry);
  app.get('/class-papers/:paper/results.csv', { config }, async (request, reply) => {
    const { head, questions, rows } = await entry.results(request.who(), paperOf(request));
    const name = head.title.replace(/[^A-Za-z0-9]+/g, '-').slice(0, 60);
    return reply
      .headers({
        'content-type': 'text/csv; charset=utf-8',
        'content-disposition': `attachment; filename="results-${name}.csv"`,
        'cache-control': 'no-store',
      })
      .send(writeResults(rows, questions));
  });
}

const query = z.object({
  saved: z.uuid().optional().catch(undefined),
  again: z.literal('yes').optional().catch(undefined),
  correct: z.uuid().optional().catch(undefined),
  added: z
    .string()
    .regex(/^\d{1,3}$/)
    .optional()
    .catch(undefined),
});

function oneByOne(app: FastifyInstance, entry: EntryService): void {
  app.get('/class-papers/:paper/enter', { config }, async (request, reply) => {
    const paper = paperOf(request);
    const view = await entry.view(request.who(), paper);
    const { saved, again, correct, added } = query.parse(request.query ?? {});
    const said = saved === undefined ? addedWords(added) : savedWords(view, saved, again === 'yes');
    const typed = correct === undefined ? freshForm(view) : formOf(correct, await entry.sheet(request.who(), paper, correct));
    return showEnter(request, reply, view, { typed, faults: {}, said });
  });

  app.post('/class-papers/:paper/enter', { config }, async (request, reply) => {
    const paper = paperOf(request);
    const typed = forms.typedOf(request.body);
    const view = await entry.view(request.who(), paper);
    const done = await save(entry, request, view, typed);
    if ('to' in done) return reply.redirect(`/class-papers/${paper}/enter?saved=${done.to}`, 303);
    reply.code(422);
    // Once more, since what hinders may have come about meanwhile.
    const sure = done.doubted === undefined ? {} : { sure: done.doubted };
    return showEnter(request, reply, await entry.view(request.who(), paper), {
      typed: { ...typed, ...sure },
      faults: done.faults,
      said: null,
    });
  });
}

function showEnter(request: FastifyRequest, reply: FastifyReply, view: EntryView, state: EnterState): FastifyReply {
  const page = enterPage(view, request.who(), reply.formToken(), state);
  const title = page.data.fault === null ? page.data.headline : 'Not saved yet';
  return reply.page(page, { title, scripts: ['letters-field'] });
}

/** @returns what the address of the next form says of this one; or what does not fit */
async function save(
  entry: EntryService,
  request: FastifyRequest,
  view: EntryView,
  typed: forms.EntryTyped,
): Promise<{ to: string } | { faults: forms.EntryFaults; doubted?: string }> {
  const { paperId } = view.head;
  const letters = forms.readVersion(typed, view);
  const doubt = 'faults' in letters ? null : await entry.doubt(request.who(), paperId, letters.typed);
  if (doubt !== null && typed.sure !== typed.version.trim()) return { faults: { version: doubt }, doubted: typed.version.trim() };
  if (typed.sitting !== undefined) {
    const read = letters;
    if ('faults' in read) return read;
    await entry.correct(request.who(), paperId, typed.sitting, read.typed);
    return { to: typed.sitting };
  }
  const read = forms.readSheet(typed, view);
  if ('faults' in read) return read;
  const entered = await entry.enter(request.who(), paperId, read.wish);
  if (entered.state === 'entered') return { to: entered.sittingId };
  const field = 'guestName' in read.wish ? 'name' : 'candidate';
  const who = 'guestName' in read.wish ? read.wish.guestName : forms.nameOfMember(view, read.wish.memberId);
  if (entered.state === 'on-screen')
    return { faults: { [field]: `${who} ${forms.onScreen}, and what is saved there will count: a candidate has one result of a paper.` } };
  if (entered.same) return { to: `${entered.sittingId}&again=yes` };
  const mark = `version ${entered.version}, ${entered.right} of ${view.letters[0]?.length ?? 0}`;
  return { faults: { [field]: `${who} is already entered: ${mark}. To change that sheet, choose Correct in the table below.` } };
}

function addedWords(added: string | undefined): EnterState['said'] {
  if (added === undefined) return null;
  if (added === '0') return { look: 'must', word: 'Already entered.', note: 'The same table was sent twice; it counts once.' };
  return { look: 'yes', word: `${counted(Number(added), 'sheet')} entered.`, note: 'See the table below.' };
}

function removing(app: FastifyInstance, setting: SettingService): void {
  app.post('/class-papers/:paper/enter/:sitting/remove', { config }, async (request, reply) => {
    const { paper, sitting } = known(forms.sheetParams.safeParse(request.params));
    await setting.removeGuest(request.who(), paper, sitting);
    return reply.redirect(`/class-papers/${paper}/enter`, 303);
  });

  app.post('/class-papers/:paper/enter/:sitting/name', { config }, async (request, reply) => {
    const { paper, sitting } = known(forms.sheetParams.safeParse(request.params));
    await setting.takeNameOff(request.who(), paper, sitting);
    return reply.redirect(`/class-papers/${paper}/enter`, 303);
  });
}

/** A text within its limit may take three times as much on its way, and a file comes beside it. */
const bodyLimit = 4 * mostBytes;

function readingTables(app: FastifyInstance, entry: EntryService): void {
  app.get('/class-papers/:paper/csv', { config }, async (request, reply) => {
    const view = await entry.view(request.who(), paperOf(request));
    return reply.page(csvPage(view, request.who(), reply.formToken(), '', null), { title: 'Results from a table' });
  });

  // Apart from the other routes, since only this one takes files.
  void app.register(async (apart) => {
    apart.addContentTypeParser('multipart/form-data', { parseAs: 'buffer', bodyLimit }, async (request: FastifyRequest, body: Buffer) =>
      readFileForm(body, request.headers['content-type'] ?? '', forms.csvFields),
    );

    apart.post('/class-papers/:paper/csv', { config, bodyLimit }, async (request, reply) => {
      const paper = paperOf(request);
      const view = await entry.view(request.who(), paper);
      const { file, confirm, clean, ...typed } = forms.csvTyped(request.body);
      const text = file === undefined ? typed.text : decodeFile(file);
      const read = readResults(text, forms.knownPaper(view));
      if (!('why' in read)) {
        const sheets = read.rows.flatMap(({ sheet }) => (sheet === null ? [] : [sheet]));
        const plain = sheets.length === read.rows.length && read.rows.every(({ doubt }) => doubt === null);
        // Only what was looked at is confirmed: no new file, and no other number of rows.
        const confirmed = confirm === 'on' && file === undefined && (clean ?? sheets.length) === sheets.length;
        if (sheets.length > 0 && (plain || confirmed)) {
          const entered = await entry.enterMany(request.who(), paper, sheets.map(forms.wishOf));
          const count = entered.filter(({ state }) => state === 'entered').length;
          return reply.redirect(`/class-papers/${paper}/enter?added=${count}`, 303);
        }
      }
      reply.code(422);
      const back = text.length > mostBytes ? '' : text;
      return reply.page(csvPage(view, request.who(), reply.formToken(), back, read), { title: 'Not imported yet' });
    });
  });
}

function paperOf({ params }: FastifyRequest): string {
  const parsed = paperParams.safeParse(params);
  if (!parsed.success) throw new RungwiseError('not-found');
  return parsed.data.paper;
}
