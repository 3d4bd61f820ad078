import { execFileSync, spawn } from 'node:child_process';

import type { YuvPicture } from '../../src/contract/picture.ts';

interface FilmFacts {
  readonly widthPx: number;
  readonly heightPx: number;
  readonly fullRange: boolean;
  readonly timesS: readonly number[];
}

/**
 * The pictures of a film, decoded by the installed ffmpeg: for development under Node only. Each
 * picture lives in the same memory as the one before it. Rotation is carried out by ffmpeg. A filter
 * of ffmpeg's that keeps the size (`hflip`, `eq=brightness=-0.2`) spoils the film on purpose; a change
 * of size is `scaledTo`.
 */
export async function* filmPictures(
  filmPath: string,
  filter?: string,
  scaledTo?: { readonly widthPx: number; readonly heightPx: number },
): AsyncGenerator<YuvPicture> {
  const facts = { ...probeFilm(filmPath), ...scaledTo };
  const scale = scaledTo && `scale=${scaledTo.widthPx}:${scaledTo.heightPx}`;
  const filters = [filter, scale].filter((part) => part !== undefined).join(',');
  const chromaStride = Math.ceil(facts.widthPx / 2);
  const yBytes = facts.widthPx * facts.heightPx;
  const chromaBytes = chromaStride * Math.ceil(facts.heightPx / 2);
  const picture = new Uint8Array(yBytes + 2 * chromaBytes);
  // Asked for in its own range: a change of pixel format would rescale full-range luma.
  const pixelFormat = facts.fullRange ? 'yuvj420p' : 'yuv420p';
  const decoder = spawn(
    'ffmpeg',
    [
      '-v',
      'error',
      '-i',
      filmPath,
      '-map',
      '0:v:0',
      ...(filters ? ['-vf', filters] : []),
      '-fps_mode',
      'passthrough',
      '-f',
      'rawvideo',
      '-pix_fmt',
      pixelFormat,
      '-',
    ],
    { stdio: ['ignore', 'pipe', 'inherit'] },
  );
  let filled = 0;
  let index = 0;
  try {
    // Left open on the way out: a pipe that breaks under it makes the decoder complain.
    const chunks = decoder.stdout.iterator({ destroyOnReturn: false });
    for await (const chunk of chunks as AsyncIterable<Uint8Array>) {
      for (let at = 0; at < chunk.length;) {
        const take = Math.min(chunk.length - at, picture.length - filled);
        picture.set(chunk.subarray(at, at + take), filled);
        at += take;
        filled += take;
        if (filled < picture.length) continue;
        filled = 0;
        yield {
          widthPx: facts.widthPx,
          heightPx: facts.heightPx,
          timeS: facts.timesS[index++] ?? Number.NaN,
          y: picture.subarray(0, yBytes),
          yStride: facts.widthPx,
          u: picture.subarray(yBytes, yBytes + chromaBytes),
          v: picture.subarray(yBytes + chromaBytes),
          chromaStride,
          chromaStep: 1,
          chromaShift: 1,
          fullRange: facts.fullRange,
        };
      }
    }
  } finally {
    decoder.kill('SIGKILL');
    decoder.stdout.destroy();
  }
}

function probeFilm(filmPath: string): FilmFacts {
  const wanted =
    'stream=width,height,color_range,pix_fmt:stream_side_data=rotation:packet=pts_time,flags';
  const text = execFileSync(
    'ffprobe',
    ['-v', 'error', '-select_streams', 'v:0', '-show_entries', wanted, '-of', 'json', filmPath],
    { encoding: 'utf8', maxBuffer: 1 << 28 },
  );
  const probed = JSON.parse(text) as {
    streams: {
      width: number;
      height: number;
      color_range?: string;
      pix_fmt?: string;
      side_data_list?: { rotation?: number }[];
    }[];
    packets: { pts_time: string; flags: string }[];
  };
  const stream = probed.streams[0];
  if (!stream) throw new Error('no video in the file');
  const rotationDeg = stream.side_data_list?.find((d) => d.rotation !== undefined)?.rotation ?? 0;
  const onItsSide = Math.abs(rotationDeg) % 180 === 90;
  return {
    widthPx: onItsSide ? stream.height : stream.width,
    heightPx: onItsSide ? stream.width : stream.height,
    fullRange: stream.color_range === 'pc' || (stream.pix_fmt ?? '').startsWith('yuvj'),
    timesS: probed.packets
      .filter((p) => !p.flags.includes('D'))
      .map((p) => Number(p.pts_time))
      .sort((a, b) => a - b),
  };
}
