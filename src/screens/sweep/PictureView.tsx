import { useEffect, useRef, useState, type ReactNode } from 'react';

import type { SweepSession } from '../../contract/session.ts';
import type { PictureOverlay } from '../../contract/sweep.ts';
import { words } from '../words/words.ts';
import { PictureLegend, PictureMarks } from './PictureMarks.tsx';

export interface PictureViewProps {
  readonly session: SweepSession;
  /** The camera's stream, seen until the first measured picture comes; null for a film. */
  readonly stream: MediaStream | null;
  /** False until pictures are measured: a picture from before that would be an old one. */
  readonly isMeasuring: boolean;
  /** Told the picture's width over height, which the screen's columns follow. */
  readonly onShape: (shape: number) => void;
  /** Laid over the picture. */
  readonly children?: ReactNode;
}

/**
 * What the camera sees, with what was found drawn on it. Marks and picture come together: each
 * picture is shown with what was found in this very one.
 */
export function PictureView({ session, stream, isMeasuring, onShape, children }: PictureViewProps) {
  const [overlay, setOverlay] = useState<PictureOverlay | null>(null);
  const seen = isMeasuring ? overlay : null;
  return (
    <figure className="picture">
      <div className="picture-frame">
        {stream !== null && (
          <CameraVideo stream={stream} isCovered={isMeasuring} onShape={onShape} />
        )}
        <ShownCanvas
          session={session}
          isHidden={stream !== null && !isMeasuring}
          onShape={onShape}
          onOverlay={setOverlay}
        />
        {seen !== null && <PictureMarks overlay={seen} />}
        {children}
      </div>
      <PictureLegend overlay={seen} />
    </figure>
  );
}

interface ShownCanvasProps {
  readonly session: SweepSession;
  readonly isHidden: boolean;
  readonly onShape: (shape: number) => void;
  readonly onOverlay: (overlay: PictureOverlay | null) => void;
}

function ShownCanvas({ session, isHidden, onShape, onOverlay }: ShownCanvasProps) {
  const canvas = useRef<HTMLCanvasElement>(null);
  useEffect(() => {
    session.onPreview(({ picture, overlay }) => {
      const size = sizeOf(picture);
      const target = canvas.current;
      if (target !== null) {
        // Setting a size clears the canvas, which flickers: only when it is another one.
        if (target.width !== size.width) target.width = size.width;
        if (target.height !== size.height) target.height = size.height;
        target.getContext('2d')?.drawImage(picture, 0, 0, size.width, size.height);
        onShape(size.width / size.height);
        onOverlay(overlay);
      }
      picture.close();
    });
    return () => session.onPreview(null);
  }, [session, onShape, onOverlay]);
  return <canvas ref={canvas} hidden={isHidden} role="img" aria-label={words.sweep.pictureOf} />;
}

function sizeOf(picture: ImageBitmap | VideoFrame): { width: number; height: number } {
  return 'displayWidth' in picture
    ? { width: picture.displayWidth, height: picture.displayHeight }
    : { width: picture.width, height: picture.height };
}

interface CameraVideoProps {
  readonly stream: MediaStream;
  /** While measured pictures are shown over it, it stands still: playing on would be drawn with each picture. */
  readonly isCovered: boolean;
  readonly onShape: (shape: number) => void;
}

function CameraVideo({ stream, isCovered, onShape }: CameraVideoProps) {
  const video = useRef<HTMLVideoElement>(null);
  useEffect(() => {
    const element = video.current;
    if (element === null) return;
    element.srcObject = stream;
    return () => {
      element.srcObject = null;
    };
  }, [stream]);
  useEffect(() => {
    if (isCovered) video.current?.pause();
    // Where it may not play by itself its last picture stays, as without this.
    else void video.current?.play().catch(() => undefined);
  }, [isCovered]);
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
