import { spawn } from 'node:child_process';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';

import { onceListening, type EnginePage } from './enginePage.ts';

interface Answer {
  readonly id?: number;
  readonly error?: string;
  readonly message?: string;
  readonly result?: unknown;
}

/** Firefox without a window, driven over WebDriver BiDi (W3C) through Node's own WebSocket. */
export async function openFirefoxPage(port: number): Promise<EnginePage> {
  const profile = mkdtempSync(join(tmpdir(), 'tiltsweep-firefox-'));
  // A fresh profile asks its maker for this and that: nothing here may leave the machine.
  writeFileSync(
    join(profile, 'user.js'),
    [
      ['network.captive-portal-service.enabled', false],
      ['network.connectivity-service.enabled', false],
      ['app.update.disabledForTesting', true],
      ['browser.safebrowsing.update.enabled', false],
      ['datareporting.policy.dataSubmissionEnabled', false],
      ['toolkit.telemetry.server', ''],
      ['services.settings.server', 'data:,'],
      ['extensions.update.enabled', false],
      ['media.gmp-manager.updateEnabled', false],
    ]
      .map(([name, value]) => `user_pref(${JSON.stringify(name)}, ${JSON.stringify(value)});\n`)
      .join(''),
  );
  const browser = spawn(
    'firefox-esr',
    ['--headless', '--no-remote', '--profile', profile, `--remote-debugging-port=${port}`],
    { stdio: 'ignore', detached: true },
  );
  const end = () => {
    if (browser.pid !== undefined && browser.exitCode === null) process.kill(-browser.pid);
    rmSync(profile, { recursive: true, force: true, maxRetries: 5 });
  };
  try {
    const ask = await onceListening(() => connect(`ws://127.0.0.1:${port}/session`));
    const { capabilities } = await ask<{ capabilities: { browserVersion: string } }>(
      'session.new',
      {
        capabilities: {},
      },
    );
    const tree = await ask<{ contexts: { context: string }[] }>('browsingContext.getTree', {});
    const { context } = tree.contexts[0]!;
    return {
      version: `Firefox ${capabilities.browserVersion}`,
      goTo: (url) => ask('browsingContext.navigate', { context, url, wait: 'complete' }),
      async run<T>(body: string) {
        const evaluated = await ask<{
          type: string;
          result?: { value: string };
          exceptionDetails?: { text: string };
        }>('script.evaluate', {
          expression: `(async () => JSON.stringify({ value: await (async () => { ${body} })() }))()`,
          target: { context },
          awaitPromise: true,
        });
        if (evaluated.type !== 'success') throw new Error(evaluated.exceptionDetails?.text);
        return (JSON.parse(evaluated.result!.value) as { value: T }).value;
      },
      async close() {
        await ask('browser.close', {}).catch(() => undefined);
        end();
      },
    };
  } catch (error) {
    end();
    throw error;
  }
}

/** A connection on which each command gets its answer. */
async function connect(url: string): Promise<<T>(method: string, params: object) => Promise<T>> {
  const socket = new WebSocket(url);
  await new Promise<void>((resolve, reject) => {
    socket.addEventListener('open', () => resolve());
    socket.addEventListener('error', () => reject(new Error(`nothing listens at ${url}`)));
  });
  const waiting = new Map<number, (answer: Answer) => void>();
  socket.addEventListener('message', ({ data }) => {
    const answer = JSON.parse(String(data)) as Answer;
    if (answer.id !== undefined) waiting.get(answer.id)?.(answer);
  });
  socket.addEventListener('close', () => {
    for (const answer of waiting.values()) answer({ error: 'closed', message: 'browser is gone' });
  });
  let lastId = 0;
  return <T>(method: string, params: object) =>
    new Promise<T>((resolve, reject) => {
      const id = ++lastId;
      waiting.set(id, ({ error, message, result }) => {
        waiting.delete(id);
        if (error) reject(new Error(`${method}: ${error}: ${message}`));
        else resolve(result as T);
      });
      socket.send(JSON.stringify({ id, method, params }));
    });
}
