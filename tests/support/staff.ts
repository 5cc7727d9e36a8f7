import type { TestApp, Visitor } from './app.js';

export const password = 'a fine long password';

/** Sets up the first administrator, and a tutor whom the administrator invites. */
export async function staffOf(app: TestApp): Promise<{ administrator: Visitor; tutor: Visitor }> {
  const [administrator, tutor] = [app.visitor('10.0.0.1'), app.visitor('10.0.0.2')];
  const link = `/set-up/${(await app.accounts.setUpToken()) ?? ''}`;
  await administrator.submit(await administrator.get(link), link, { name: 'Alma', password });
  const invited = await administrator.submit(await administrator.get('/staff'), '/staff', { name: 'Tessa', role: 'tutor' });
  const invitation = new URL(invited.html.querySelector('.plate.must a')?.getAttribute('href') ?? '').pathname;
  await tutor.submit(await tutor.get(invitation), invitation, { password });
  return { administrator, tutor };
}
