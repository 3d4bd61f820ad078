import { X509Certificate } from 'node:crypto';
import {
  chmodSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  rmSync,
  statSync,
  writeFileSync,
} from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';

import { afterEach, beforeEach, describe, expect, it } from 'vitest';

import { keptCertificates } from '../../../src/server/keptCertificates.ts';

const NAMES = { machine: 'shed-pc', addresses: ['192.168.1.5'], hosts: ['shed-pc.local'] };
const NOW_MS = Date.UTC(2026, 3, 4);
const DAY_MS = 86_400_000;

let folder: string;
beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), 'tiltsweep-certificates-'));
});
afterEach(() => rmSync(folder, { recursive: true }));

describe('certificates of this machine', () => {
  it('are an authority and a server certificate that it signed, for the addresses', async () => {
    const { leaf, authority, newAuthority } = await keptCertificates(folder, NAMES, NOW_MS);
    expect(newAuthority).toBe(true);
    const server = new X509Certificate(leaf.certificate);
    const root = new X509Certificate(authority.certificate);
    expect(root.ca).toBe(true);
    expect(server.ca).toBe(false);
    expect(server.verify(root.publicKey)).toBe(true);
    expect(server.checkIP('192.168.1.5')).toBe('192.168.1.5');
    expect(server.checkIP('192.168.1.6')).toBeUndefined();
    expect(server.checkHost('shed-pc.local')).toBe('shed-pc.local');
    // The longest that tablets take from an authority that a person installed: 825 days.
    const lengthDays = (Date.parse(server.validTo) - Date.parse(server.validFrom)) / DAY_MS;
    expect(lengthDays).toBeLessThan(825);
  });

  it('can be read by their owner only, and nothing half written stays', async () => {
    await keptCertificates(folder, NAMES, NOW_MS);
    const names = readdirSync(folder);
    expect(names).toHaveLength(4);
    for (const name of names) expect(statSync(join(folder, name)).mode & 0o777).toBe(0o600);
  });

  it('are kept from one start to the next', async () => {
    const first = await keptCertificates(folder, NAMES, NOW_MS);
    const second = await keptCertificates(folder, NAMES, NOW_MS + DAY_MS);
    expect(second).toEqual({ ...first, newAuthority: false });
  });

  it('at a new address only the server certificate is new: tablets go on trusting', async () => {
    const first = await keptCertificates(folder, NAMES, NOW_MS);
    const moved = { ...NAMES, addresses: ['192.168.1.77'] };
    const second = await keptCertificates(folder, moved, NOW_MS);
    expect(second.authority).toEqual(first.authority);
    expect(second.newAuthority).toBe(false);
    expect(new X509Certificate(second.leaf.certificate).checkIP('192.168.1.77')).toBeDefined();
    expect(second.leaf.key).not.toBe(first.leaf.key);
  });

  it('near its end the server certificate is made anew, and later the authority', async () => {
    const first = await keptCertificates(folder, NAMES, NOW_MS);
    const later = await keptCertificates(folder, NAMES, NOW_MS + 380 * DAY_MS);
    expect(later.leaf.certificate).not.toBe(first.leaf.certificate);
    expect(later.authority).toEqual(first.authority);
    const muchLater = await keptCertificates(folder, NAMES, NOW_MS + 3640 * DAY_MS);
    expect(muchLater.newAuthority).toBe(true);
  });

  it('a key that others could read, or that is broken, is not used again', async () => {
    const first = await keptCertificates(folder, NAMES, NOW_MS);
    chmodSync(join(folder, 'authority.key.pem'), 0o644);
    const second = await keptCertificates(folder, NAMES, NOW_MS);
    expect(second.newAuthority).toBe(true);
    expect(second.authority.key).not.toBe(first.authority.key);
    writeFileSync(join(folder, 'server.key.pem'), 'no key');
    const third = await keptCertificates(folder, NAMES, NOW_MS);
    expect(third.authority).toEqual(second.authority);
    expect(readFileSync(join(folder, 'server.key.pem'), 'utf8')).toBe(third.leaf.key);
  });
});
