import { spawnSync } from 'node:child_process';
import { writeFileSync } from 'node:fs';

import { auditVerdict, type AuditVerdict } from './auditVerdict.ts';

/**
 * `npm run audit`: asks the registry for known weaknesses of what is shipped and of what it is built
 * with. One in what is shipped fails; one in a tool is told. Where the registry cannot be asked it
 * says "not checked", counts as skipped, and is no failure. A file named on the command line gets the
 * counts.
 */
const LIMIT_MS = 60_000;

const shipped = ask(['--omit=dev']);
const all = ask([]);
tell('what is shipped', shipped);
tell('with all tools', all);
const report = process.argv[2];
const is = (kind: AuditVerdict['kind']) => (shipped.kind === kind ? 1 : 0);
const tally = { passed: is('clean'), failed: is('weak'), skipped: is('not-checked') };
if (report) writeFileSync(report, JSON.stringify(tally));
process.exit(tally.failed);

function ask(flags: readonly string[]): AuditVerdict {
  const patience = ['--fetch-retries=0', '--fetch-timeout=20000'];
  const { stdout } = spawnSync('npm', ['audit', '--json', ...patience, ...flags], {
    encoding: 'utf8',
    timeout: LIMIT_MS,
  });
  return auditVerdict(stdout ?? '');
}

function tell(what: string, verdict: AuditVerdict): void {
  console.log(`${what}: ${saidOf(verdict)}`);
}

function saidOf(verdict: AuditVerdict): string {
  switch (verdict.kind) {
    case 'clean':
      return `no known weakness in ${verdict.packages} packages`;
    case 'weak':
      return `known weaknesses: ${verdict.names.join(', ')}`;
    case 'not-checked':
      return `not checked: ${verdict.why}`;
  }
}
