// People who come in, and what their browser would send with the next form.
import { randomUUID } from 'node:crypto';

/** @returns {Promise<string>} the cookie of a candidate's session; addresses are one each, since comings-in from one are limited */
export async function comeIn(accounts, name, address) {
  const form = { name, region: 'uk', timeZone: 'Europe/London', startToken: randomUUID() };
  return (await accounts.start(form, address)).cookie;
}

/** Looks at a page. @returns the cookies and the token that its forms are sent with */
export async function lookAt(server, cookie, url) {
  const page = await server.inject({ url, headers: { cookie: `rungwise=${cookie}` } });
  if (page.statusCode !== 200) throw new Error(`${url} answered ${page.statusCode}.`);
  const formCookie = page.cookies.find(({ name }) => name === 'rungwise-form');
  return {
    cookies: `rungwise=${cookie}; rungwise-form=${encodeURIComponent(formCookie.value)}`,
    csrf: /name="_csrf" value="([^"]+)"/.exec(page.payload)[1],
  };
}
