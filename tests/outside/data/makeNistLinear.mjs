// Makes nistLinear.json from the NIST StRD linear regression sets (public domain, NIST/ITL) as
// they stand in Debian's package gretl-data, folder data/nist.
// Run: node makeNistLinear.mjs <that folder>
import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';

const folder = process.argv[2];
if (folder === undefined) throw new Error('name the folder of the NIST files');

const NAMES = [
  'Norris',
  'Pontius',
  'Longley',
  'Filip',
  'Wampler1',
  'Wampler2',
  'Wampler3',
  'Wampler4',
  'Wampler5',
];
const NUMBER = String.raw`[-+]?\d*\.?\d+(?:E[-+]?\d+)?`;

const sets = NAMES.map((name) => {
  const lines = readFileSync(join(folder, `${name}.dat`), 'latin1').split(/\r?\n/);
  const estimates = [];
  const standardDeviations = [];
  for (const line of lines) {
    const match = line.match(new RegExp(`^\\s*B\\d+\\s+(${NUMBER})\\s+(${NUMBER})\\s*$`));
    if (match === null) continue;
    estimates.push(Number(match[1]));
    standardDeviations.push(Number(match[2]));
  }
  const residual = lines.findIndex((line) => /Standard Deviation\s+[\d.]/.test(line));
  const residualStandardDeviation = Number(lines[residual].trim().split(/\s+/).at(-1));
  const start = lines.findLastIndex((line) => /^Data:?\s+y\s/.test(line.trim()));
  const rows = lines
    .slice(start + 1)
    .map((line) => line.trim().split(/\s+/).map(Number))
    .filter((row) => row.length > 1 && row.every(Number.isFinite));
  const polynomial = rows[0].length === 2;
  return { name, polynomial, estimates, standardDeviations, residualStandardDeviation, rows };
});

const json = sets.map((set) => `  ${JSON.stringify(set)}`).join(',\n');
writeFileSync(new URL('nistLinear.json', import.meta.url), `[\n${json}\n]\n`);
