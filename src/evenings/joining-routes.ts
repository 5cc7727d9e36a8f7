import type { FastifyInstance } from 'fastify';
import { known, RungwiseError } from '../core/errors.js';
import { answerPage, lateWords, ownWords, reviewPage } from './answer-page.js';
import * as forms from './forms.js';
import { openPage } from './open-page.js';
import type { EveningsService } from './service.js';

/** A candidate's side: the evening of one's class, on one's own phone. */

const config = { access: 'join-evenings' as const };
const styles = ['class.css'];

export function joiningRoutes(app: FastifyInstance, { joining }: EveningsService): void {
  app.get('/evening', { config }, async (request, reply) => {
    const person = request.who();
    const open = await joining.open(person);
    const running = open.filter(({ place }) => place > 0);
    const [only, ...others] = running;
    if (only !== undefined && others.length === 0) return reply.redirect(`/evening/${only.eveningId}`, 303);
    return reply.page(openPage(running, open.length > 0, person), { title: 'Class evening', scripts: ['evening'] });
  });

  app.get('/evening/:evening', { config }, async (request, reply) => {
    const person = request.who();
    const { evening } = known(forms.joinedParams.safeParse(request.params));
    const view = await joining.view(person, evening);
    const { late, choice } = forms.lateQuery.parse(request.query);
    const words = late === undefined || choice === undefined ? null : lateWords(late, choice, view.own?.choice ?? null);
    const page = answerPage(view, person, reply.formToken(), words);
    return reply.page(page, { title: `${page.data.place}, ${page.data.title}`, layout: 'two', styles, scripts: ['evening'] });
  });

  app.get('/evening/:evening/:place', { config }, async (request, reply) => {
    const person = request.who();
    const { evening, place } = known(forms.reviewParams.safeParse(request.params));
    const view = await joining.review(person, evening, place);
    const page = view === null ? null : reviewPage(view, person, place);
    if (page === null) return reply.redirect(`/evening/${evening}`, 303);
    return reply.page(page, { title: `${page.data.place}, ${page.data.title}`, layout: 'two', styles });
  });

  app.post('/evening/:evening/answer', { config }, async (request, reply) => {
    const { evening } = known(forms.joinedParams.safeParse(request.params));
    const form = forms.choiceForm.safeParse(request.body);
    if (!form.success) throw new RungwiseError('form-not-understood');
    const { seen, choice } = form.data;
    const { did, own } = await joining.choose(request.who(), evening, seen, choice);
    // Our script asks for words and stays on its page; a form moves on.
    if (request.headers.accept === 'application/json')
      return did === 'saved'
        ? reply.send({ saved: true, choice, words: ownWords(choice) })
        : reply.code(409).send({ saved: false, choice: own ?? '', words: lateWords(did, choice, own) });
    return reply.redirect(`/evening/${evening}${did === 'saved' ? '' : `?late=${did}&choice=${choice}`}`, 303);
  });
}
