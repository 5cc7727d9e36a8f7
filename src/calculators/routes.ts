import { randomInt } from 'node:crypto';
import type { FastifyInstance } from 'fastify';
import { known } from '../core/errors.js';
import { calculatorParams, calculatorQuery, listQuery, regionOf, tryParams, tryQuery } from './forms.js';
import { calculatorListPage, calculatorPage } from './pages.js';
import type { CalculatorsService } from './service.js';
import { tryPage } from './try-page.js';

/** Everything typed stands in the address, so that a result can be shared, printed and kept, and works without scripts. */
export function calculatorsRoutes(calculators: CalculatorsService) {
  return async function routes(app: FastifyInstance): Promise<void> {
    const config = { access: 'calculate' as const };

    app.get('/calculators', { config }, async (request, reply) => {
      const { q } = listQuery.parse(request.query);
      return reply.page(calculatorListPage(calculators.list(request.person, q), q), { title: 'Calculators' });
    });

    app.get('/calculators/:calculator', { config }, async (request, reply) => {
      const { calculator } = known(calculatorParams.safeParse(request.params));
      const typed = calculatorQuery.parse(request.query);
      const worked = await calculators.work(request.person, calculator, typed, regionOf(typed['region']));
      if (worked.faults.size > 0) reply.code(422);
      return reply.page(calculatorPage(worked), {
        title: worked.calculation.title,
        layout: 'two',
        scripts: ['calculator', 'numeric-field'],
      });
    });

    app.get('/calculators/:calculator/try/:family', { config }, async (request, reply) => {
      const { calculator, family } = known(tryParams.safeParse(request.params));
      const query = tryQuery.parse(request.query);
      const seed = query.seed ?? randomInt(1, 1_000_000);
      const tried = await calculators.tryOut(request.person, calculator, family, { ...query, seed });
      if (query.seed === null) {
        const { form, region } = tried;
        return reply.redirect(`/calculators/${calculator}/try/${family}?form=${form}&seed=${seed}&region=${region}`, 302);
      }
      const page = tryPage(tried);
      return reply.page(page, { title: page.data.familyTitle, layout: 'two', scripts: tried.form === 'typed' ? ['numeric-field'] : [] });
    });
  };
}
