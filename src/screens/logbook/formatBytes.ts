import { formatNumber } from '../words/numbers.ts';

const UNITS = ['kB', 'MB', 'GB', 'TB'];

/** A size for people: "12 MB". */
export function formatBytes(bytes: number): string {
  let size = bytes / 1000;
  let unit = 0;
  while (size >= 1000 && unit < UNITS.length - 1) {
    size /= 1000;
    unit += 1;
  }
  return `${formatNumber(size, size < 10 && unit > 0 ? 1 : 0)}\u00a0${UNITS[unit]}`;
}
