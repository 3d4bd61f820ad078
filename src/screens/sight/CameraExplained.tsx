import { words } from '../words/words.ts';

/** What the camera is for and where its pictures go, before the browser asks whether it may be opened. */
export function CameraExplained({ onUnderstood }: { readonly onUnderstood: () => void }) {
  return (
    <section className="sight-explained" data-role="camera-explained">
      <p className="instruction">{words.sight.cameraWhy}</p>
      <p>{words.sight.cameraAsk}</p>
      <button type="button" className="main" data-role="open-sight" onClick={onUnderstood}>
        {words.sight.startCamera}
      </button>
    </section>
  );
}
