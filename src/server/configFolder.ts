import { homedir } from 'node:os';
import { join } from 'node:path';

/** Where this machine's key and certificates are kept: the user's own, never the project's folder. */
export function configFolder(
  env: Readonly<Record<string, string | undefined>>,
  platform: NodeJS.Platform,
): string {
  if (env.TILTSWEEP_CONFIG) return env.TILTSWEEP_CONFIG;
  const name = 'tiltsweep';
  if (platform === 'win32') return join(env.APPDATA ?? join(homedir(), 'AppData/Roaming'), name);
  if (platform === 'darwin') return join(homedir(), 'Library/Application Support', name);
  return join(env.XDG_CONFIG_HOME || join(homedir(), '.config'), name);
}
