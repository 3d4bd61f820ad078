import { isIPv4 } from 'node:net';
import { parseArgs } from 'node:util';

import { failed, succeeded, type Outcome } from '../contract/outcome.ts';

export interface ServerOptions {
  /** Where the app is served on this machine, by HTTP. */
  readonly port: number;
  /** Where it is served in the local network, by HTTPS; null when it is not. */
  readonly lan: { readonly port: number; readonly address: string | null } | null;
  /** Whether sources that are newer than the built app are built first. */
  readonly build: boolean;
}

const PORT = 4173;
const LAN_PORT = 4443;
const LARGEST_PORT = 65_535;

export const USAGE = `npm start -- [options]

  --no-lan            this machine only: no HTTPS, no certificate   (TILTSWEEP_LAN=off)
  --port N            port at localhost, ${PORT} unless given           (TILTSWEEP_PORT)
  --lan-port N        port in the local network, ${LAN_PORT} unless given (TILTSWEEP_LAN_PORT)
  --lan-address A     serve at this IPv4 address of this machine    (TILTSWEEP_LAN_ADDRESS)
  --no-build          serve dist as it is
  --help              this text

Keys and certificates are kept in the user's own configuration folder (or TILTSWEEP_CONFIG).
`;

/** What the command line asks for; the environment counts where the command line is silent. */
export function serverOptions(
  args: readonly string[],
  env: Readonly<Record<string, string | undefined>>,
): Outcome<ServerOptions | 'help', 'options-wrong'> {
  const parsed = parsedArgs(args);
  if (!parsed.ok) return parsed;
  const given = parsed.value;
  if (given.help) return succeeded('help');
  const port = portOf(given.port ?? env.TILTSWEEP_PORT, PORT);
  if (!port.ok) return port;
  const build = !given['no-build'];
  if (given['no-lan'] || env.TILTSWEEP_LAN === 'off') {
    return succeeded({ port: port.value, lan: null, build });
  }
  const lanPort = portOf(given['lan-port'] ?? env.TILTSWEEP_LAN_PORT, LAN_PORT);
  if (!lanPort.ok) return lanPort;
  const address = given['lan-address'] ?? env.TILTSWEEP_LAN_ADDRESS ?? null;
  if (address !== null && !isIPv4(address)) return failed('options-wrong', { address });
  return succeeded({ port: port.value, lan: { port: lanPort.value, address }, build });
}

function parsedArgs(args: readonly string[]) {
  const flag = { type: 'boolean' } as const;
  const text = { type: 'string' } as const;
  try {
    const { values } = parseArgs({
      args: [...args],
      options: {
        help: flag,
        'no-lan': flag,
        'no-build': flag,
        port: text,
        'lan-port': text,
        'lan-address': text,
      },
    });
    return succeeded(values);
  } catch (error) {
    return failed('options-wrong', { why: error instanceof Error ? error.message : String(error) });
  }
}

function portOf(text: string | undefined, usual: number): Outcome<number, 'options-wrong'> {
  if (text === undefined || text === '') return succeeded(usual);
  const port = Number(text);
  // 0 lets the system choose a free one.
  const right = /^\d+$/.test(text) && port <= LARGEST_PORT;
  return right ? succeeded(port) : failed('options-wrong', { port: text });
}
