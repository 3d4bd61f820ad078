import type { Server } from 'node:http';
import type { AddressInfo } from 'node:net';

import { failed, succeeded, type Outcome } from '../contract/outcome.ts';

/** A tablet opens some ten connections; past this someone plays, and the others still get through. */
const MOST_CONNECTIONS = 200;
/** A request has no body here: its few lines arrive at once or never. */
const REQUEST_LIMIT_MS = 20_000;

/** Opens a server at one address of this machine; the port that it got, or why it got none. */
export async function listenOn(
  server: Server,
  address: string,
  port: number,
): Promise<Outcome<number, 'port-taken' | 'address-unknown' | 'not-served'>> {
  server.maxConnections = MOST_CONNECTIONS;
  server.requestTimeout = REQUEST_LIMIT_MS;
  server.headersTimeout = REQUEST_LIMIT_MS;
  return new Promise((resolve) => {
    server.once('error', (error: NodeJS.ErrnoException) => {
      const evidence = { address, port, system: error.code ?? error.message };
      if (error.code === 'EADDRINUSE') resolve(failed('port-taken', evidence));
      else if (error.code === 'EADDRNOTAVAIL') resolve(failed('address-unknown', evidence));
      else resolve(failed('not-served', evidence));
    });
    server.listen({ host: address, port, exclusive: true }, () => {
      resolve(succeeded((server.address() as AddressInfo).port));
    });
  });
}

/** Ends a server at once, also connections that are kept open. */
export function closeServer(server: Server): void {
  server.close();
  server.closeAllConnections();
}
