import { createPrivateKey, randomUUID, X509Certificate } from 'node:crypto';
import { chmodSync, mkdirSync, readFileSync, renameSync, statSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';

import { makeAuthority, makeLeaf, type KeyAndCertificate } from './makeCertificates.ts';

export interface ServerCertificates {
  readonly authority: KeyAndCertificate;
  readonly leaf: KeyAndCertificate;
  /** True when tablets that trusted this machine before must be told to trust it anew. */
  readonly newAuthority: boolean;
}

/** For whom the certificate must hold. */
export interface MachineNames {
  readonly machine: string;
  readonly addresses: readonly string[];
  readonly hosts: readonly string[];
}

/** So long before its end a certificate is made anew: a Saturday's work never meets the end. */
const RENEW_BEFORE_MS = 30 * 86_400_000;
/** Owner only: a key that others can read is no longer a secret. */
const SECRET_FILE_MODE = 0o600;
const SECRET_FOLDER_MODE = 0o700;

/**
 * This machine's authority and server certificate from the folder where they are kept; what is
 * missing, broken, near its end, for other addresses, or was readable by others is made anew. A new
 * address costs a new server certificate only: tablets go on trusting the authority.
 */
export async function keptCertificates(
  folder: string,
  names: MachineNames,
  nowMs: number,
): Promise<ServerCertificates> {
  mkdirSync(folder, { recursive: true, mode: SECRET_FOLDER_MODE });
  const keptAuthority = readPair(folder, 'authority');
  const authorityHolds = keptAuthority !== null && holdsUntil(keptAuthority, nowMs);
  const authority = authorityHolds ? keptAuthority : await makeAuthority(nowMs, names.machine);
  if (!authorityHolds) writePair(folder, 'authority', authority);
  const keptLeaf = authorityHolds ? readPair(folder, 'server') : null;
  if (keptLeaf !== null && holdsUntil(keptLeaf, nowMs) && isFor(keptLeaf, authority, names)) {
    return { authority, leaf: keptLeaf, newAuthority: false };
  }
  const leaf = await makeLeaf(nowMs, authority, names);
  writePair(folder, 'server', leaf);
  return { authority, leaf, newAuthority: !authorityHolds };
}

function readPair(folder: string, name: string): KeyAndCertificate | null {
  const keyPath = join(folder, `${name}.key.pem`);
  try {
    // Windows keeps its own access lists; these bits say nothing there.
    const openToOthers = process.platform !== 'win32' && (statSync(keyPath).mode & 0o077) !== 0;
    if (openToOthers) return null;
    const pair = {
      key: readFileSync(keyPath, 'utf8'),
      certificate: readFileSync(join(folder, `${name}.certificate.pem`), 'utf8'),
    };
    const belongs = new X509Certificate(pair.certificate).checkPrivateKey(
      createPrivateKey(pair.key),
    );
    return belongs ? pair : null;
  } catch {
    return null;
  }
}

function writePair(folder: string, name: string, pair: KeyAndCertificate): void {
  writeSecret(join(folder, `${name}.key.pem`), pair.key);
  writeSecret(join(folder, `${name}.certificate.pem`), pair.certificate);
}

/** Never readable by others, not even while it is written, and never half written. */
function writeSecret(path: string, text: string): void {
  const unfinished = `${path}.${randomUUID()}`;
  writeFileSync(unfinished, text, { mode: SECRET_FILE_MODE, flag: 'wx' });
  chmodSync(unfinished, SECRET_FILE_MODE);
  renameSync(unfinished, path);
}

function holdsUntil(pair: KeyAndCertificate, nowMs: number): boolean {
  const { validFrom, validTo } = new X509Certificate(pair.certificate);
  return Date.parse(validFrom) <= nowMs && Date.parse(validTo) - nowMs > RENEW_BEFORE_MS;
}

function isFor(leaf: KeyAndCertificate, authority: KeyAndCertificate, names: MachineNames) {
  const certificate = new X509Certificate(leaf.certificate);
  const signedBy = new X509Certificate(authority.certificate);
  return (
    certificate.checkIssued(signedBy) &&
    certificate.verify(signedBy.publicKey) &&
    names.addresses.every((address) => certificate.checkIP(address) !== undefined) &&
    names.hosts.every((host) => certificate.checkHost(host) !== undefined)
  );
}

/** SHA-256 of a certificate in pairs, as a tablet shows it, for comparing by eye. */
export function fingerprintOf(certificate: string): string {
  return new X509Certificate(certificate).fingerprint256;
}
