import { spawnSync } from 'node:child_process';
import { mkdtempSync, readFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';

/**
 * Runs every check and test of the project, prints what each says, and ends with one line that
 * counts them all. A part that breaks without counting its tests counts as one failed.
 */
interface Tally {
  readonly passed: number;
  readonly failed: number;
  readonly skipped: number;
}

const CRASHED: Tally = { passed: 0, failed: 1, skipped: 0 };

interface Part {
  readonly name: string;
  readonly run: () => Tally;
}

/** A part that takes longer hangs: the browser tests take some twenty minutes, the rest less. */
const PART_LIMIT_MS = 45 * 60_000;

const root = resolve(import.meta.dirname, '../..');
const reports = mkdtempSync(join(tmpdir(), 'tiltsweep-tests-'));

const parts: Part[] = [
  { name: 'types', run: () => check('npm', ['run', '--silent', 'types']) },
  { name: 'lint', run: () => check('npm', ['run', '--silent', 'lint']) },
  ...['unit', 'outside', 'architecture', 'pipeline'].map((name) => ({
    name,
    run: () => vitest(name),
  })),
  { name: 'browser', run: playwright },
  { name: 'engines', run: () => counted('engines') },
  { name: 'audit', run: () => counted('audit') },
];

const wanted = process.argv.slice(2);
const tallies = parts
  .filter(({ name }) => wanted.length === 0 || wanted.includes(name))
  .map(({ name, run }) => {
    console.log(`\n── ${name} ──`);
    return { name, ...run() };
  });
console.log('');
for (const { name, passed, failed, skipped } of tallies) {
  console.log(`${name} – ${passed} passed, ${failed} failed, ${skipped} skipped`);
}
const sum = (of: keyof Tally) => tallies.reduce((total, tally) => total + tally[of], 0);
const skipped = sum('skipped');
console.log(
  `${sum('passed')} passed, ${sum('failed')} failed${skipped > 0 ? `, ${skipped} skipped` : ''}`,
);
process.exit(sum('failed') > 0 ? 1 : 0);

function runPart(command: string, args: string[], env: NodeJS.ProcessEnv = {}): boolean {
  const done = spawnSync(command, args, {
    cwd: root,
    stdio: ['ignore', 'inherit', 'inherit'],
    env: { ...process.env, ...env },
    timeout: PART_LIMIT_MS,
  });
  return done.status === 0;
}

function check(command: string, args: string[]): Tally {
  return runPart(command, args) ? { passed: 1, failed: 0, skipped: 0 } : CRASHED;
}

function vitest(project: string): Tally {
  const report = join(reports, `${project}.json`);
  const clean = runPart('npx', [
    'vitest',
    'run',
    '--project',
    project,
    '--passWithNoTests',
    '--reporter',
    'default',
    '--reporter',
    'json',
    `--outputFile.json=${report}`,
  ]);
  return tallyOf(clean, report, (json: VitestReport) => ({
    passed: json.numPassedTests,
    // A file that cannot be loaded has no tests to fail.
    failed:
      json.numFailedTests +
      json.testResults.filter((f) => f.status === 'failed' && f.assertionResults.length === 0)
        .length,
    skipped: json.numPendingTests + json.numTodoTests,
  }));
}

interface VitestReport {
  readonly numPassedTests: number;
  readonly numFailedTests: number;
  readonly numPendingTests: number;
  readonly numTodoTests: number;
  readonly testResults: readonly { status: string; assertionResults: readonly unknown[] }[];
}

function playwright(): Tally {
  const report = join(reports, 'browser.json');
  const clean = runPart('npx', ['playwright', 'test', '--reporter', 'list,json'], {
    PLAYWRIGHT_JSON_OUTPUT_NAME: report,
  });
  return tallyOf(clean, report, (json: PlaywrightReport) => ({
    passed: json.stats.expected + json.stats.flaky,
    failed: json.stats.unexpected + json.errors.length,
    skipped: json.stats.skipped,
  }));
}

/** A script that counts by itself: the same job in browsers of other makes, the registry's answer. */
function counted(script: 'engines' | 'audit'): Tally {
  const report = join(reports, `${script}.json`);
  const clean = runPart('npm', ['run', '--silent', script, '--', report]);
  return tallyOf(clean, report, (json: Tally) => json);
}

interface PlaywrightReport {
  readonly errors: readonly unknown[];
  readonly stats: { expected: number; unexpected: number; flaky: number; skipped: number };
}

function tallyOf<T>(clean: boolean, reportPath: string, count: (json: T) => Tally): Tally {
  let tally: Tally;
  try {
    tally = count(JSON.parse(readFileSync(reportPath, 'utf8')) as T);
  } catch {
    return CRASHED;
  }
  return !clean && tally.failed === 0 ? { ...tally, failed: 1 } : tally;
}
