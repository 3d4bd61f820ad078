import { spawn } from 'node:child_process';

import { onceListening, type EnginePage } from './enginePage.ts';

const BROWSER = '/usr/lib/x86_64-linux-gnu/webkit2gtk-4.1/MiniBrowser';
/** Reading the sample takes some ten seconds; on a machine that is busy much longer. */
const SCRIPT_LIMIT_MS = 300_000;

/** WebKitGTK's own small browser, driven by its WebDriver over HTTP (W3C WebDriver). */
export async function openWebKitPage(port: number): Promise<EnginePage> {
  const driver = spawn('xvfb-run', ['-a', 'WebKitWebDriver', `--port=${port}`], {
    stdio: 'ignore',
    detached: true,
  });
  const end = () => {
    // The driver and its screen are one group of processes: all of it ends.
    if (driver.pid !== undefined && driver.exitCode === null) process.kill(-driver.pid);
  };
  const ask = async <T>(method: 'POST' | 'DELETE', path: string, body?: object): Promise<T> => {
    const answer = await fetch(`http://127.0.0.1:${port}${path}`, {
      method,
      headers: { 'content-type': 'application/json' },
      ...(body ? { body: JSON.stringify(body) } : {}),
    });
    const { value } = (await answer.json()) as { value: T & { error?: string; message?: string } };
    if (value?.error) throw new Error(`${value.error}: ${value.message}`);
    return value;
  };
  try {
    const session = await onceListening(() =>
      ask<{ sessionId: string; capabilities: { browserVersion: string } }>('POST', '/session', {
        capabilities: {
          alwaysMatch: {
            'webkitgtk:browserOptions': { binary: BROWSER, args: ['--automation'] },
            timeouts: { script: SCRIPT_LIMIT_MS },
          },
        },
      }),
    );
    const at = `/session/${session.sessionId}`;
    return {
      version: `WebKitGTK ${session.capabilities.browserVersion}`,
      goTo: (url) => ask('POST', `${at}/url`, { url }),
      async run<T>(body: string) {
        const { value, thrown } = await ask<{ value: T; thrown?: string }>(
          'POST',
          `${at}/execute/async`,
          {
            script: `const done = arguments[arguments.length - 1];
              (async () => { ${body} })().then((value) => done({ value }),
                (error) => done({ thrown: String(error) }));`,
            args: [],
          },
        );
        if (thrown !== undefined) throw new Error(thrown);
        return value;
      },
      async close() {
        await ask('DELETE', at).catch(() => undefined);
        end();
      },
    };
  } catch (error) {
    end();
    throw error;
  }
}
