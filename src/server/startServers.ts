import { X509Certificate } from 'node:crypto';
import { createServer as createHttpServer, type Server } from 'node:http';
import { createServer as createHttpsServer } from 'node:https';

import { succeeded, type Outcome } from '../contract/outcome.ts';
import { answerRequest, type FindFile } from './answerRequest.ts';
import {
  AUTHORITY_ADDRESS,
  CONNECT_ADDRESS,
  CONNECT_STYLE_ADDRESS,
  connectPage,
  type LanPlace,
} from './connectPage.ts';
import { CONNECT_STYLE } from './connectStyle.ts';
import { connectLanguage } from './connectWords.ts';
import { fingerprintOf, type ServerCertificates } from './keptCertificates.ts';
import { closeServer, listenOn } from './listenOn.ts';
import { fileOf, type ServedFile, type ServedFiles } from './servedFiles.ts';

export interface Served {
  readonly port: number;
  close(): void;
}

type NotServed = 'port-taken' | 'address-unknown' | 'not-served';

const LOCAL_HOSTS = ['localhost', '127.0.0.1', '[::1]'];

/**
 * Serves at localhost by HTTP, for this machine only. Some browsers look for localhost at ::1 first,
 * so it is served there too where the machine has it.
 */
export async function serveLocally(
  find: FindFile,
  wantedPort: number,
): Promise<Outcome<Served, NotServed>> {
  const answer = answerRequest(find, new Set(LOCAL_HOSTS));
  const servers = [createHttpServer(answer), createHttpServer(answer)] as const;
  const port = await listenOn(servers[0], '127.0.0.1', wantedPort);
  if (!port.ok) return port;
  await listenOn(servers[1], '::1', port.value);
  return succeeded(servedBy(servers, port.value));
}

/** Serves in the local network by HTTPS, at the addresses given and no others. */
export async function serveLan(
  find: FindFile,
  wantedPort: number,
  addresses: readonly [string, ...string[]],
  hosts: readonly string[],
  { leaf, authority }: ServerCertificates,
): Promise<Outcome<Served, NotServed>> {
  const answer = answerRequest(find, new Set([...addresses, ...hosts]));
  const make = () =>
    createHttpsServer(
      { key: leaf.key, cert: leaf.certificate + authority.certificate, minVersion: 'TLSv1.2' },
      answer,
    ) as Server;
  const [first, ...others] = addresses;
  const servers = [make()];
  const port = await listenOn(servers[0]!, first, wantedPort);
  if (!port.ok) return port;
  for (const address of others) {
    const server = make();
    if ((await listenOn(server, address, port.value)).ok) servers.push(server);
  }
  return succeeded(servedBy(servers, port.value));
}

function servedBy(servers: readonly Server[], port: number): Served {
  return { port, close: () => servers.forEach(closeServer) };
}

/** The built app's files, and beside them the page and the certificate for tablets. */
export function findServed(
  files: ServedFiles,
  lan: { readonly place: LanPlace; readonly authority: string } | null,
): FindFile {
  const page = (language: 'en' | 'de') =>
    fileOf(Buffer.from(connectPage(language, lan?.place ?? null)), 'text/html; charset=utf-8');
  const pages = { en: page('en'), de: page('de') };
  const extra = new Map<string, ServedFile>([
    ['/connect.en.html', pages.en],
    ['/connect.de.html', pages.de],
    [CONNECT_STYLE_ADDRESS, fileOf(Buffer.from(CONNECT_STYLE), 'text/css; charset=utf-8')],
  ]);
  if (lan) {
    const { raw } = new X509Certificate(lan.authority);
    extra.set(AUTHORITY_ADDRESS, fileOf(raw, 'application/x-x509-ca-cert'));
  }
  return (address, request) =>
    address === CONNECT_ADDRESS
      ? pages[connectLanguage(request.headers['accept-language'])]
      : (extra.get(address) ?? files.get(address));
}

/** Where tablets find this machine: the first address, by which the code leads here. */
export function lanPlace(address: string, port: number, authority: string): LanPlace {
  return { url: `https://${address}:${port}/`, fingerprint: fingerprintOf(authority) };
}
