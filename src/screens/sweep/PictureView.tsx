import { useEffect, useRef } from 'react';

import type { SweepSession } from '../../contract/session.ts';
import type { PictureOverlay } from '../../contract/sweep.ts';
import { words } from '../words/words.ts';
import { PictureLegend, PictureMarks } from './PictureMarks.tsx';

export interface PictureViewProps {
  readonly session: SweepSession;
  readonly stream: MediaStream | null;
  readonly overlay: PictureOverlay | null;
  /** Told the picture's width over height, which the screen's columns follow. */
  readonly onShape: (shape: number) => void;
}

/** What the camera sees, with what was found drawn on it. */
export function PictureView({ session, stream, overlay, onShape }: PictureViewProps) {
  return (
    <figure className="picture">
      <div className="picture-frame" role="img" aria-label={words.sweep.pictureOf}>
        {stream === null ? (
          <PreviewCanvas session={session} onShape={onShape} />
        ) : (
          <CameraVideo stream={stream} onShape={onShape} />
        )}
        {overlay !== null && <PictureMarks overlay={overlay} />}
      </div>
      <PictureLegend overlay={overlay} />
    </figure>
  );
}

function PreviewCanvas({
  session,
  onShape,
}: {
  readonly session: SweepSession;
  readonly onShape: (shape: number) => void;
}) {
  const canvas = useRef<HTMLCanvasElement>(null);
  useEffect(() => {
    session.onPreview((picture) => {
      const target = canvas.current;
      if (target !== null) {
        target.width = picture.width;
        target.height = picture.height;
        target.getContext('2d')?.drawImage(picture, 0, 0);
        onShape(picture.width / picture.height);
      }
      picture.close();
    });
    return () => session.onPreview(null);
  }, [session, onShape]);
  return <canvas ref={canvas} aria-hidden="true" />;
}

function CameraVideo({
  stream,
  onShape,
}: {
  readonly stream: MediaStream;
  readonly onShape: (shape: number) => void;
}) {
  const video = useRef<HTMLVideoElement>(null);
  useEffect(() => {
    const element = video.current;
    if (element === null) return;
    element.srcObject = stream;
    return () => {
      element.srcObject = null;
    };
  }, [stream]);
  return (
    <video
      ref={video}
      autoPlay
      muted
      playsInline
      aria-hidden="true"
      onResize={(event) => {
        const { videoWidth, videoHeight } = event.currentTarget;
        if (videoWidth > 0 && videoHeight > 0) onShape(videoWidth / videoHeight);
      }}
    />
  );
}
