import { words } from '../words/words.ts';

/**
 * Told once, before the wheel is turned: in the settings nobody looks for it. It stands in the place of
 * the list until it is understood, so that the way into the sweep stays in sight.
 */
export function ScreenMayGoDark({ onUnderstood }: { readonly onUnderstood: () => void }) {
  return (
    <div className="sight-dark" data-role="screen-may-go-dark">
      <p>{words.sight.mayGoDark}</p>
      <button type="button" className="plain" onClick={onUnderstood}>
        {words.start.cautionsUnderstood}
      </button>
    </div>
  );
}
