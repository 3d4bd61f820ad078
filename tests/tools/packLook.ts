import { spawnSync } from 'node:child_process';
import { mkdtempSync, readdirSync, renameSync, rmSync, statSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';

/**
 * Makes the reference pictures of the screens anew and packs them: `npm run look`. A screen of this
 * app has few colours; with sixteen of its own each picture takes a third of the room, and no
 * point of it differs by as much as the comparison notices. Needs ffmpeg.
 */
const COLOURS = 16;
const root = resolve(import.meta.dirname, '../..');
const folder = join(root, 'tests/browser/look');

const made = spawnSync(
  'npx',
  ['playwright', 'test', 'lookOfScreens', '--update-snapshots=all', ...process.argv.slice(2)],
  { cwd: root, stdio: 'inherit' },
);
const unpacked = mkdtempSync(join(tmpdir(), 'tiltsweep-look-'));
let bytes = 0;
for (const name of readdirSync(folder).filter((one) => one.endsWith('.png'))) {
  const path = join(folder, name);
  const packed = join(unpacked, name);
  const filter =
    `split[a][b];[a]palettegen=max_colors=${COLOURS}:reserve_transparent=0[p];` +
    '[b][p]paletteuse=dither=none';
  const ran = spawnSync(
    'ffmpeg',
    ['-v', 'error', '-y', '-i', path, '-vf', filter].concat([
      '-pix_fmt',
      'pal8',
      '-pred',
      'mixed',
      '-compression_level',
      '100',
      packed,
    ]),
    { stdio: 'inherit' },
  );
  if (ran.status !== 0) throw new Error(`ffmpeg could not pack ${name}`);
  if (statSync(packed).size < statSync(path).size) renameSync(packed, path);
  bytes += statSync(path).size;
}
rmSync(unpacked, { recursive: true });
console.log(`${folder}: ${(bytes / 1e6).toFixed(2)} MB`);
process.exit(made.status ?? 1);
