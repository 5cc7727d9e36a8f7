import { Agent, createServer, request, type IncomingMessage, type ServerResponse } from 'node:http';
import type { AddressInfo } from 'node:net';

/**
 * A plain proxy before several servers, as a club would set one up: the next request goes to the next server; one that takes no
 * connection is passed over, and one that breaks off is answered by 502, never sent again by the proxy itself.
 */
export interface Proxy {
  /** Without a slash at the end. */
  address: string;
  /** Which server answered what, in turn. */
  passed: { server: number; method: string; url: string }[];
  close(): Promise<void>;
}

/** Where a request comes from, as the proxy sees it: in a test all come from this computer, so a header says it, which goes no further. */
export const cameFrom = 'x-came-from';

export async function startProxy(servers: readonly string[]): Promise<Proxy> {
  const agent = new Agent({ keepAlive: true });
  const passed: Proxy['passed'] = [];
  let turn = 0;
  const proxy = createServer((incoming, outgoing) => {
    turn += 1;
    pass(incoming, outgoing, turn, servers.length);
  });

  function pass(incoming: IncomingMessage, outgoing: ServerResponse, at: number, left: number): void {
    const server = at % servers.length;
    const { method = 'GET', url = '/' } = incoming;
    const onward = request(new URL(url, servers[server]), { method, agent, headers: headersOf(incoming) });
    let sent = false;
    onward.on('socket', (socket) => {
      // A connection that is kept was open already; whether it still is shows only when it is used.
      if (!socket.connecting) sent = true;
      else socket.once('connect', () => (sent = true));
      const begin = (): void => void (incoming.readableEnded ? onward.end() : incoming.pipe(onward));
      if (socket.connecting) socket.once('connect', begin);
      else begin();
    });
    onward.on('response', (answer) => {
      passed.push({ server, method, url });
      outgoing.writeHead(answer.statusCode ?? 502, answer.headers);
      outgoing.flushHeaders();
      answer.pipe(outgoing);
      answer.on('error', () => outgoing.destroy());
    });
    onward.on('error', () => {
      if (!sent && left > 1) return pass(incoming, outgoing, at + 1, left - 1);
      if (outgoing.headersSent) outgoing.destroy();
      else outgoing.writeHead(502, { 'content-type': 'text/plain' }).end('The server behind broke off.');
    });
    outgoing.on('close', () => onward.destroy());
  }

  await new Promise<void>((resolve) => proxy.listen({ port: 0, host: '127.0.0.1' }, resolve));
  return {
    address: `http://127.0.0.1:${(proxy.address() as AddressInfo).port}`,
    passed,
    close: async () => {
      agent.destroy();
      proxy.closeAllConnections();
      await new Promise((resolve) => proxy.close(resolve));
    },
  };
}

function headersOf({ headers, socket }: IncomingMessage): Record<string, string | string[]> {
  const { [cameFrom]: claimed, ...given } = headers;
  const from = typeof claimed === 'string' ? claimed : (socket.remoteAddress ?? '');
  const before = given['x-forwarded-for'];
  return {
    ...(given as Record<string, string | string[]>),
    // What a client claims stays in front, as usual proxies leave it: the servers must believe the last one only.
    'x-forwarded-for': before === undefined ? from : `${String(before)}, ${from}`,
    'x-forwarded-proto': 'http',
    'x-forwarded-host': given.host ?? '',
  };
}
