import { spawn } from 'node:child_process';
import { once } from 'node:events';
import { mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { availableParallelism } from 'node:os';
import { join, parse } from 'node:path';
import { parseArgs } from 'node:util';

import { filmNoise } from '../../samples/stand/cpu/filmNoise.ts';
import { renderPicture } from '../../samples/stand/cpu/renderPicture.ts';
import { filmSetup } from '../../samples/stand/film/filmSetup.ts';
import { filmTruth } from '../../samples/stand/film/filmTruth.ts';
import { scriptedPoses } from '../../samples/stand/motion/scriptedPoses.ts';
import { readScene } from '../../samples/stand/scene/readScene.ts';
import type { StandScene } from '../../samples/stand/scene/standScene.ts';
import { standModel } from '../../samples/stand/view/standModel.ts';

/**
 * Renders a scene of the practice stand to a film with its setup and its truth:
 *
 *   npm run render -- --scene FILE --out DIR [--name N] [--processes P] [--still FRAME]
 *
 * The film is H.264 by the `ffmpeg` on the path. --still writes one picture as PNG instead.
 */
const { values } = parseArgs({
  options: {
    scene: { type: 'string' },
    out: { type: 'string' },
    name: { type: 'string' },
    processes: { type: 'string', default: String(Math.min(4, availableParallelism())) },
    still: { type: 'string' },
    /** Internal, FIRST/STEP: writes every STEP-th picture from FIRST on, raw, to standard output. */
    share: { type: 'string' },
  },
});
if (!values.scene || !(values.out || values.share)) {
  console.error('usage: npm run render -- --scene FILE --out DIR [--name N]');
  process.exit(2);
}
const scene = sceneOf(values.scene);
if (values.share) await renderShare(values.share);
else await renderFilm(values.scene, values.out!);

async function renderFilm(sceneFile: string, out: string): Promise<void> {
  mkdirSync(out, { recursive: true });
  const target = join(out, values.name ?? parse(sceneFile).name);
  const poses = scriptedPoses(scene);
  const model = standModel(scene);
  const save = (ending: string, data: unknown, indent: number) =>
    writeFileSync(`${target}.${ending}.json`, `${JSON.stringify(data, null, indent)}\n`);
  if (values.still) {
    const frame = Number(values.still);
    const picture = renderPicture(model, poses[frame], filmNoise(scene).forPicture(frame));
    return encode(`${target}.png`, [picture.rgb]);
  }
  save('setup', filmSetup(model, poses), 1);
  save('truth', filmTruth(model, poses), 0);
  await encode(`${target}.mp4`, pictures(sceneFile, poses.length, Number(values.processes)));
  console.log(`${target}.mp4: ${poses.length} pictures`);
}

function sceneOf(file: string): StandScene {
  const scene = readScene(JSON.parse(readFileSync(file, 'utf8')));
  if (scene.ok) return scene.value;
  console.error(`${file}: ${JSON.stringify(scene.failure.evidence)}`);
  process.exit(2);
}

/** The pictures in order, drawn by processes that each take every n-th. */
async function* pictures(sceneFile: string, count: number, processes: number) {
  const bytes = 3 * scene.camera.widthPx * scene.camera.heightPx;
  const shares = Array.from({ length: processes }, (_, k) => {
    const args = [import.meta.filename, '--scene', sceneFile, '--share', `${k}/${processes}`];
    const child = spawn(process.execPath, [...process.execArgv, ...args], {
      stdio: ['ignore', 'pipe', 'inherit'],
    });
    return wholePictures(child.stdout, bytes);
  });
  for (let index = 0; index < count; index++) {
    const next = await shares[index % processes].next();
    if (next.done) throw new Error(`picture ${index} of ${count} was not drawn`);
    yield next.value;
  }
}

/** Cuts a stream of bytes into pictures. */
async function* wholePictures(stream: AsyncIterable<Buffer>, bytes: number) {
  let filled = 0;
  let picture = new Uint8Array(bytes);
  for await (const chunk of stream) {
    for (let from = 0; from < chunk.length;) {
      const part = chunk.subarray(from, from + bytes - filled);
      picture.set(part, filled);
      filled += part.length;
      from += part.length;
      if (filled < bytes) continue;
      yield picture;
      picture = new Uint8Array(bytes);
      filled = 0;
    }
  }
}

async function renderShare(share: string): Promise<void> {
  const [first, step] = share.split('/').map(Number);
  const model = standModel(scene);
  const poses = scriptedPoses(scene);
  const noise = filmNoise(scene);
  for (let index = first; index < poses.length; index += step) {
    const { rgb } = renderPicture(model, poses[index], noise.forPicture(index));
    if (!process.stdout.write(rgb)) await once(process.stdout, 'drain');
  }
}

async function encode(
  file: string,
  frames: AsyncIterable<Uint8Array> | Iterable<Uint8Array>,
): Promise<void> {
  const { widthPx, heightPx, frameRateHz } = scene.camera;
  const film = ['-c:v', 'libx264', '-preset', 'fast', '-crf', '20', '-pix_fmt', 'yuv420p'];
  const ffmpeg = spawn(
    'ffmpeg',
    [
      ...['-v', 'error', '-y', '-f', 'rawvideo', '-pix_fmt', 'rgb24'],
      ...['-s', `${widthPx}x${heightPx}`, '-r', String(frameRateHz), '-i', '-'],
      ...(file.endsWith('.mp4') ? [...film, '-movflags', '+faststart'] : []),
      file,
    ],
    { stdio: ['pipe', 'inherit', 'inherit'] },
  );
  const ended = new Promise<void>((resolve, reject) => {
    ffmpeg.on('error', reject);
    ffmpeg.on('close', (code) => (code === 0 ? resolve() : reject(new Error(`ffmpeg: ${code}`))));
  });
  for await (const frame of frames) {
    if (!ffmpeg.stdin.write(frame)) await once(ffmpeg.stdin, 'drain');
  }
  ffmpeg.stdin.end();
  await ended;
}
