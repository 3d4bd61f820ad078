import { spawnSync } from 'node:child_process';

/** Programs that an engine needs, and Debian's packages that bring them. */
export interface EngineNeeds {
  readonly programs: readonly string[];
  readonly packages: readonly string[];
}

/** True when the engine is there, after installing it where that can be done (Debian, as root). */
export function ensureEngine({ programs, packages }: EngineNeeds): boolean {
  if (programs.every(isThere)) return true;
  if (process.getuid?.() !== 0 || !isThere('apt-get')) return false;
  const apt = (...args: string[]) =>
    spawnSync('apt-get', args, {
      stdio: ['ignore', 'ignore', 'inherit'],
      env: { ...process.env, DEBIAN_FRONTEND: 'noninteractive' },
    });
  apt('update', '-qq');
  apt('install', '-y', '-qq', '--no-install-recommends', ...packages);
  return programs.every(isThere);
}

function isThere(program: string): boolean {
  return spawnSync('which', [program], { stdio: 'ignore' }).status === 0;
}
