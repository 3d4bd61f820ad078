import { spawnSync } from 'node:child_process';
import { join } from 'node:path';

import { decodePictures } from '../ffmpegPictures.ts';
import { filmGraph } from './filmGraph.ts';
import { handPicture } from './handPicture.ts';
import { troubleOf, type FilmFacts, type TroubledPlan } from './trouble.ts';

/** As good as a tablet records; a coarse film has its own. */
const FINE_RATE_FACTOR = 20;

/** What has to be known of a film on disk, by the `ffprobe` on the path and its first picture. */
export function factsOfFilm(name: string, filmPath: string): FilmFacts {
  const wanted = 'stream=width,height,avg_frame_rate:format=duration';
  const args = ['-v', 'error', '-select_streams', 'v:0', '-show_entries', wanted, '-of', 'json'];
  const probed = JSON.parse(run('ffprobe', [...args, filmPath]).toString()) as {
    streams: { width: number; height: number; avg_frame_rate: string }[];
    format: { duration: string };
  };
  const { width, height, avg_frame_rate: rate } = probed.streams[0];
  const [pictures, seconds] = rate.split('/').map(Number);
  return {
    ...{ name, widthPx: width, heightPx: height, durationS: Number(probed.format.duration) },
    picturesPerS: pictures / seconds,
    laserColour: laserColourOf(filmPath),
  };
}

/** Nothing else in a shed is as green or as red as the line: whichever shows in more places. */
function laserColourOf(filmPath: string): 'green' | 'red' {
  const { v } = decodePictures(filmPath, { format: 'yuv420p' })[0];
  const green = v.filter((c) => c < 100).length;
  const red = v.filter((c) => c > 175).length;
  return green > red ? 'green' : 'red';
}

/** Makes the troubled film at `outPath`; what is needed on the way lies in `folder`. */
export function makeFilm(plan: TroubledPlan, filmPath: string, outPath: string, folder: string) {
  const hand = troubleOf(plan, 'hand');
  const inputs = ['-i', filmPath];
  if (hand) {
    const { widthPx, heightPx } = plan.film;
    const across = Math.round(hand.widthShare * widthPx);
    const picture = handPicture(hand.colour, across, Math.round(hand.heightShare * heightPx));
    const path = join(folder, 'hand.png');
    const raw = ['-f', 'rawvideo', '-pix_fmt', 'rgba', '-s'];
    const size = `${picture.widthPx}x${picture.heightPx}`;
    run('ffmpeg', ['-v', 'error', '-y', ...raw, size, '-i', '-', path], picture.rgba);
    inputs.push('-i', path);
  }
  const rate = troubleOf(plan, 'coarse')?.rateFactor ?? FINE_RATE_FACTOR;
  const coder = ['-c:v', 'libx264', '-preset', 'veryfast', '-crf', String(rate)];
  const graph = ['-filter_complex', filmGraph(plan), '-map', '[out]', '-fps_mode', 'passthrough'];
  run('ffmpeg', ['-v', 'error', '-y', ...inputs, ...graph, ...coder, outPath]);
}

function run(command: string, args: readonly string[], input?: Uint8Array): Buffer {
  const done = spawnSync(command, args, { maxBuffer: 2 ** 30, ...(input ? { input } : {}) });
  if (done.status !== 0) throw new Error(`${command}: ${done.stderr?.toString() ?? done.error}`);
  return done.stdout;
}
