import type { NetworkInterfaceInfo } from 'node:os';

/** Interfaces of virtual machines and containers: no tablet is on them. */
const VIRTUAL = /^(docker|br-|veth|virbr|vmnet|vboxnet|utun|tun|tap|cni|lxc)/;

/**
 * Addresses of this machine in its local network, the likeliest first: wireless, then wired. Only
 * addresses that do not reach out of a local network (RFC 1918; link-local, RFC 3927): the app is
 * never served to the internet.
 */
export function lanAddresses(
  interfaces: Readonly<Record<string, readonly NetworkInterfaceInfo[] | undefined>>,
): readonly string[] {
  return Object.entries(interfaces)
    .filter(([name]) => !VIRTUAL.test(name))
    .sort(([a], [b]) => rank(a) - rank(b))
    .flatMap(([, infos]) => infos ?? [])
    .filter((info) => info.family === 'IPv4' && !info.internal && isLocal(info.address))
    .map((info) => info.address)
    .sort((a, b) => Number(isLinkLocal(a)) - Number(isLinkLocal(b)));
}

function rank(name: string): number {
  if (/^(wl|wlan|wi-?fi)/i.test(name)) return 0;
  return /^(en|eth|ethernet)/i.test(name) ? 1 : 2;
}

function isLocal(address: string): boolean {
  const [a = 0, b = 0] = address.split('.').map(Number);
  return (
    a === 10 ||
    (a === 172 && b >= 16 && b <= 31) ||
    (a === 192 && b === 168) ||
    isLinkLocal(address)
  );
}

/** Given by the machine to itself when nothing else gave it one: works, but changes easily. */
function isLinkLocal(address: string): boolean {
  return address.startsWith('169.254.');
}
