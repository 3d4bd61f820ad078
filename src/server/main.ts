import { hostname, networkInterfaces } from 'node:os';
import { resolve } from 'node:path';

import type { Failure } from '../contract/outcome.ts';
import { builtApp } from './builtApp.ts';
import { configFolder } from './configFolder.ts';
import { keptCertificates } from './keptCertificates.ts';
import { lanAddresses } from './lanAddresses.ts';
import { qrForTerminal } from './qrPictures.ts';
import { serverOptions, USAGE, type ServerOptions } from './serverOptions.ts';
import { readServedFiles, type ServedFiles } from './servedFiles.ts';
import { findServed, lanPlace, serveLan, serveLocally, type Served } from './startServers.ts';

/**
 * `npm start`: builds the app where its sources are newer, serves it at localhost, and in the local
 * network by HTTPS with a code for tablets. What goes wrong with the network is said and leaves
 * localhost served: a shed may have none.
 */
const ROOT = resolve(import.meta.dirname, '../..');
const say = (line: string) => process.stdout.write(`${line}\n`);

const options = serverOptions(process.argv.slice(2), process.env);
if (!options.ok) giveUp(options.failure, `\n${USAGE}`);
else if (options.value === 'help') say(USAGE);
else await run(options.value);

async function run({ port, lan, build }: ServerOptions): Promise<void> {
  const built = build ? builtApp(ROOT) : { ok: true as const, value: resolve(ROOT, 'dist') };
  if (!built.ok) return giveUp(built.failure);
  const files = readServedFiles(built.value);
  const inLan = lan ? await offerLan(files, lan) : null;
  const local = await serveLocally(findServed(files, inLan?.tell ?? null), port);
  if (!local.ok) {
    inLan?.served.close();
    return giveUp(local.failure);
  }
  say(`\n  Tiltsweep\n\n  on this computer   http://localhost:${local.value.port}/`);
  if (inLan) sayLan(inLan);
  say('\n  Stop with Ctrl+C.\n');
  for (const signal of ['SIGINT', 'SIGTERM'] as const) {
    process.once(signal, () => {
      local.value.close();
      inLan?.served.close();
    });
  }
}

interface InLan {
  readonly served: Served;
  readonly tell: NonNullable<Parameters<typeof findServed>[1]>;
  readonly newAuthority: boolean;
}

async function offerLan(
  files: ServedFiles,
  { port, address }: NonNullable<ServerOptions['lan']>,
): Promise<InLan | null> {
  const found = address === null ? lanAddresses(networkInterfaces()) : [address];
  const [first, ...others] = found;
  if (first === undefined) {
    say('\n  No local network found: served on this computer only.');
    return null;
  }
  try {
    const hosts = [
      `${hostname()
        .toLowerCase()
        .replace(/\.local$/, '')}.local`,
    ];
    const names = { machine: hostname(), addresses: found, hosts };
    const folder = configFolder(process.env, process.platform);
    const certificates = await keptCertificates(folder, names, Date.now());
    const { certificate } = certificates.authority;
    // The page names the port, which is known only once it is served.
    let find = findServed(files, null);
    const served = await serveLan(
      (asked, request) => find(asked, request),
      port,
      [first, ...others],
      hosts,
      certificates,
    );
    if (!served.ok) {
      say(`\n  Not served in the local network: ${inWords(served.failure)}`);
      return null;
    }
    const tell = { place: lanPlace(first, served.value.port, certificate), authority: certificate };
    find = findServed(files, tell);
    return { served: served.value, tell, newAuthority: certificates.newAuthority };
  } catch (error) {
    const why = error instanceof Error ? error.message : String(error);
    say(`\n  Not served in the local network: no certificate could be made or kept (${why}).`);
    return null;
  }
}

function sayLan({ tell, newAuthority }: InLan): void {
  const { url, fingerprint } = tell.place;
  say(`  on a tablet        ${url}connect.html\n`);
  say(qrForTerminal(`${url}connect.html`).replace(/^/gm, '  '));
  say('\n  The page leads through three steps, once for each tablet. Fingerprint (SHA-256)');
  say(
    `  of the certificate to trust:\n\n  ${fingerprint.slice(0, 47)}\n  ${fingerprint.slice(48)}`,
  );
  if (newAuthority)
    say('\n  It was made just now: tablets that trusted an older one trust it anew.');
}

function inWords({ code, evidence }: Failure): string {
  const details = Object.entries(evidence).map(([name, value]) => `${name} ${value}`);
  const reasons: Readonly<Record<string, string>> = {
    'port-taken': 'this port is in use; end the other program or choose another port',
    'address-unknown': 'this machine does not have that address',
    'build-failed': 'the app could not be built; the reason stands above',
    'options-wrong': 'this option is not understood',
  };
  const reason = reasons[code] ?? code;
  return details.length === 0 ? reason : `${reason} (${details.join(', ')})`;
}

function giveUp(failure: Failure, more = ''): void {
  process.stderr.write(`\n  ${inWords(failure)}\n${more}`);
  process.exitCode = 1;
}
