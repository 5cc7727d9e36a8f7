import { randomUUID } from 'node:crypto';
import type { FastifyInstance, FastifyRequest } from 'fastify';
import { z } from 'zod';
import { RungwiseError } from '../core/errors.js';
import { readParts } from '../platform/file-form.js';
import { archiveLimit } from './archive.js';
import { packsPage, uploadPage } from './pages.js';
import type { UploadsService } from './uploads.js';

/** Packs for tutors: the list, sending one, its report, adding it. */

const params = z.object({ upload: z.uuid() });
const config = { access: 'keep-packs' as const };

/** The archive, the other fields, and the marks between them. */
const bodyLimit = archiveLimit + 100_000;

export function packsRoutes(uploads: UploadsService) {
  return async function routes(app: FastifyInstance): Promise<void> {
    // Only here are files taken; the whole body is in memory, within the limit, before anything is looked at.
    app.addContentTypeParser('multipart/form-data', { parseAs: 'buffer', bodyLimit }, async (request: FastifyRequest, body: Buffer) =>
      readForm(body, request.headers['content-type'] ?? ''),
    );

    app.get('/packs', { config }, async (request, reply) => {
      const person = request.who();
      return reply.page(packsPage(await uploads.list(person), person, reply.formToken(), null), { title: 'Packs', layout: 'two' });
    });

    app.post('/packs', { config: { ...config, tooLarge: 'archive-too-large' as const }, bodyLimit }, async (request, reply) => {
      const person = request.who();
      const file = fileIn(request.body);
      if (file === undefined || file.bytes.length === 0) {
        reply.code(422);
        const why =
          file === undefined || file.name === 'pack.zip'
            ? 'Choose the archive first: your pack’s folder as a ZIP file.'
            : `The file “${file.name}” is empty. Pack the folder again, and look at the size of the file before you send it.`;
        return reply.page(packsPage(await uploads.list(person), person, reply.formToken(), why), { title: 'Not sent yet', layout: 'two' });
      }
      const id = randomUUID();
      await uploads.upload(person, id, file.name, file.bytes);
      return reply.redirect(`/packs/uploads/${id}`, 303);
    });

    app.get('/packs/uploads/:upload', { config }, async (request, reply) => {
      const person = request.who();
      const page = uploadPage(await uploads.find(person, idOf(request.params)), person, reply.formToken());
      return reply.page(page, { title: page.data.headline });
    });

    app.post('/packs/uploads/:upload/drop', { config }, async (request, reply) => {
      await uploads.drop(request.who(), idOf(request.params));
      return reply.redirect('/packs', 303);
    });

    app.post('/packs/uploads/:upload/add', { config }, async (request, reply) => {
      const id = idOf(request.params);
      await uploads.confirm(request.who(), id);
      return reply.redirect(`/packs/uploads/${id}`, 303);
    });
  };
}

function idOf(given: unknown): string {
  const parsed = params.safeParse(given);
  if (!parsed.success) throw new RungwiseError('not-found');
  return parsed.data.upload;
}

interface FileForm {
  _csrf: string;
  file: { name: string; bytes: Buffer };
}

/** A form of another kind, which holds texts only, brings no file. */
function fileIn(body: unknown): FileForm['file'] | undefined {
  const { file } = (body ?? {}) as Partial<FileForm>;
  return typeof file === 'object' ? file : undefined;
}

/** Fields that the page does not have are passed over. */
async function readForm(body: Buffer, contentType: string): Promise<Partial<FileForm>> {
  const form = await readParts(body, contentType);
  const [token, file] = [form.get('_csrf'), form.get('file')];
  return {
    ...(typeof token === 'string' ? { _csrf: token } : {}),
    ...(file === null || typeof file === 'string'
      ? {}
      : {
          file: {
            name: file.name.replace(/[^\p{L}\p{N}._ -]/gu, '').slice(0, 100) || 'pack.zip',
            bytes: Buffer.from(await file.arrayBuffer()),
          },
        }),
  };
}
