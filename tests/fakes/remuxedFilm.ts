import {
  BufferSource,
  BufferTarget,
  EncodedPacketSink,
  EncodedVideoPacketSource,
  Input,
  MkvOutputFormat,
  MpegTsOutputFormat,
  MP4,
  Mp4OutputFormat,
  Output,
  type OutputFormat,
} from 'mediabunny';

export type RemuxedKind = 'plain' | 'fragmented' | 'matroska' | 'live matroska' | 'transport';

/** The first pictures of an MP4 film in another container, as they are: no decoder is needed. */
export async function remuxedFilm(
  film: Uint8Array,
  kind: RemuxedKind,
  pictures: number,
): Promise<Uint8Array<ArrayBuffer>> {
  const input = new Input({ source: new BufferSource(film), formats: [MP4] });
  const track = (await input.getPrimaryVideoTrack())!;
  const target = new BufferTarget();
  const output = new Output({ format: formatOf(kind), target });
  const source = new EncodedVideoPacketSource('avc');
  output.addVideoTrack(source);
  await output.start();
  const decoderConfig = (await track.getDecoderConfig())!;
  let taken = 0;
  for await (const packet of new EncodedPacketSink(track).packets()) {
    await source.add(packet, { decoderConfig });
    if ((taken += 1) >= pictures) break;
  }
  await output.finalize();
  input.dispose();
  return new Uint8Array(target.buffer!);
}

function formatOf(kind: RemuxedKind): OutputFormat {
  switch (kind) {
    case 'plain':
      return new Mp4OutputFormat({ fastStart: 'in-memory' });
    case 'fragmented':
      return new Mp4OutputFormat({ fastStart: 'fragmented', minimumFragmentDuration: 0.5 });
    case 'transport':
      return new MpegTsOutputFormat();
    case 'matroska':
    case 'live matroska':
      return new MkvOutputFormat({ appendOnly: kind === 'live matroska' });
  }
}
