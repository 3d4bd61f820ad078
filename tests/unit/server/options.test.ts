import type { NetworkInterfaceInfo } from 'node:os';

import { describe, expect, it } from 'vitest';

import { connectLanguage, CONNECT_WORDS } from '../../../src/server/connectWords.ts';
import { lanAddresses } from '../../../src/server/lanAddresses.ts';
import { serverOptions } from '../../../src/server/serverOptions.ts';

const optionsOf = (args: string[], env = {}) => {
  const options = serverOptions(args, env);
  return options.ok ? options.value : options.failure.code;
};

describe('options of the server', () => {
  it('are the usual ports unless told', () => {
    expect(optionsOf([])).toEqual({ port: 4173, lan: { port: 4443, address: null }, build: true });
  });

  it('come from the command line before the environment', () => {
    const env = { TILTSWEEP_PORT: '5000', TILTSWEEP_LAN_PORT: '5001' };
    expect(optionsOf(['--port', '6000'], env)).toMatchObject({ port: 6000, lan: { port: 5001 } });
  });

  it('leave the network out when asked', () => {
    expect(optionsOf(['--no-lan'])).toMatchObject({ lan: null });
    expect(optionsOf([], { TILTSWEEP_LAN: 'off' })).toMatchObject({ lan: null });
  });

  it.each([
    [['--port', '70000']],
    [['--port', '-1']],
    [['--lan-port', '44x']],
    [['--lan-address', 'shed']],
    [['--unknown']],
    [['folder']],
  ])('%j is refused', (args) => {
    expect(optionsOf(args)).toBe('options-wrong');
  });
});

const ipv4 = (address: string, internal = false): NetworkInterfaceInfo => ({
  address,
  internal,
  family: 'IPv4',
  netmask: '255.255.255.0',
  mac: '00:00:00:00:00:00',
  cidr: `${address}/24`,
});

describe('addresses in the local network', () => {
  it('are those of the shed’s network only, wireless first', () => {
    const found = lanAddresses({
      lo: [ipv4('127.0.0.1', true)],
      docker0: [ipv4('172.17.0.1')],
      enp3s0: [ipv4('10.0.0.7')],
      wlp2s0: [ipv4('169.254.9.9'), ipv4('192.168.1.5')],
      ppp0: [ipv4('203.0.113.9')],
    });
    expect(found).toEqual(['192.168.1.5', '10.0.0.7', '169.254.9.9']);
  });

  it('are none on a machine that is in the internet only', () => {
    expect(lanAddresses({ eth0: [ipv4('198.51.100.4'), ipv4('172.32.0.1')] })).toEqual([]);
  });
});

describe('language of the connect page', () => {
  it.each([
    ['de-DE,de;q=0.9,en;q=0.8', 'de'],
    ['en-GB,en;q=0.9,de;q=0.8', 'en'],
    ['fr,de;q=0.5', 'de'],
    ['en;q=0.2, de;q=0.7', 'de'],
    ['de;q=0', 'en'],
    ['fr', 'en'],
    [undefined, 'en'],
  ])('%s → %s', (header, language) => {
    expect(connectLanguage(header)).toBe(language);
  });

  it('says the same things in both', () => {
    const shape = (value: unknown): unknown =>
      Array.isArray(value)
        ? value.map(shape)
        : typeof value === 'object' && value !== null
          ? Object.fromEntries(Object.entries(value).map(([key, one]) => [key, shape(one)]))
          : typeof value;
    expect(shape(CONNECT_WORDS.de)).toEqual(shape(CONNECT_WORDS.en));
  });
});
