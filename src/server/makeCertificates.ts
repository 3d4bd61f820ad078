import { generate } from 'selfsigned';

/** A certificate with its private key, both as PEM text. */
export interface KeyAndCertificate {
  readonly key: string;
  readonly certificate: string;
}

/** A tablet trusts the authority once; it outlives the tablet's usual stay in a shed. */
const AUTHORITY_YEARS = 10;
/** Tablets take no longer than 825 days from an authority that the person installed. */
const LEAF_DAYS = 397;
const DAY_MS = 86_400_000;
/** Clocks in a shed are some hours off: a certificate counts from the day before. */
const BACKDATED_MS = DAY_MS;

const STRONG = { keyType: 'ec', curve: 'P-256', algorithm: 'sha256' } as const;

/** An authority for this machine alone: it signs this server's certificates and nothing below them. */
export async function makeAuthority(nowMs: number, machine: string): Promise<KeyAndCertificate> {
  // A comma or an equals sign would begin another part of the name.
  const plainName = machine.replace(/[^\w.-]/g, '-');
  const made = await generate([{ name: 'commonName', value: `Tiltsweep on ${plainName}` }], {
    ...STRONG,
    notBeforeDate: new Date(nowMs - BACKDATED_MS),
    notAfterDate: new Date(nowMs + AUTHORITY_YEARS * 365 * DAY_MS),
    extensions: [
      { name: 'basicConstraints', cA: true, pathLenConstraint: 0, critical: true },
      { name: 'keyUsage', keyCertSign: true, cRLSign: true, critical: true },
    ],
  });
  return { key: made.private, certificate: `${made.cert}\n` };
}

/** A server certificate for addresses and names of this machine. */
export async function makeLeaf(
  nowMs: number,
  authority: KeyAndCertificate,
  names: { readonly addresses: readonly string[]; readonly hosts: readonly string[] },
): Promise<KeyAndCertificate> {
  const made = await generate([{ name: 'commonName', value: 'Tiltsweep' }], {
    ...STRONG,
    notBeforeDate: new Date(nowMs - BACKDATED_MS),
    notAfterDate: new Date(nowMs + LEAF_DAYS * DAY_MS),
    ca: { key: authority.key, cert: authority.certificate },
    extensions: [
      { name: 'basicConstraints', cA: false, critical: true },
      { name: 'keyUsage', digitalSignature: true, critical: true },
      { name: 'extKeyUsage', serverAuth: true },
      {
        name: 'subjectAltName',
        altNames: [
          ...names.hosts.map((value) => ({ type: 2 as const, value })),
          ...names.addresses.map((ip) => ({ type: 7 as const, ip })),
        ],
      },
    ],
  });
  return { key: made.private, certificate: `${made.cert}\n` };
}
