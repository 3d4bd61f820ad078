import { failed, succeeded, type Outcome } from '../contract/outcome.ts';

/** What cannot stand in an address of a built file: separators of another system, control signs. */
// oxlint-disable-next-line no-control-regex
const NEVER_IN_AN_ADDRESS = /[\\\u0000-\u001f\u007f%]/;

/**
 * The address that a request line asks for, decoded once and checked, with `/` as its page.
 *
 * Refused: anything but a path of this server (RFC 9112 allows whole URLs to proxies only), encoding
 * that is broken or doubled, `.` and `..`, empty parts, back strokes, control signs. What is left is
 * looked up in a list and touches no disk; this check is there so that a trick is told from a
 * mistyped address.
 */
export function requestedAddress(target: string): Outcome<string, 'address-refused'> {
  const path = target.split(/[?#]/, 1)[0]!;
  if (!path.startsWith('/')) return failed('address-refused', { why: 'not a path' });
  let decoded: string;
  try {
    decoded = decodeURIComponent(path);
  } catch {
    return failed('address-refused', { why: 'broken encoding' });
  }
  if (NEVER_IN_AN_ADDRESS.test(decoded)) {
    return failed('address-refused', { why: 'a sign that no file has' });
  }
  const parts = decoded.slice(1).split('/');
  const steps = parts.some((part) => part === '.' || part === '..');
  const empty = parts.slice(0, -1).some((part) => part === '');
  if (steps || empty) return failed('address-refused', { why: 'steps in the path' });
  return succeeded(decoded === '/' ? '/index.html' : decoded);
}
