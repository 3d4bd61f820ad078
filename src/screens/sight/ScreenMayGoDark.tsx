import { readBoolean, usePreference } from '../state/preference.ts';
import { words } from '../words/words.ts';

/** Told once, before the wheel is turned: in the settings nobody looks for it. */
export function ScreenMayGoDark() {
  const [isTold, setTold] = usePreference('toldScreenMayGoDark', false, readBoolean);
  if (isTold) return null;
  return (
    <div className="sight-dark" data-role="screen-may-go-dark">
      <p>{words.sight.mayGoDark}</p>
      <button type="button" className="plain" onClick={() => setTold(true)}>
        {words.start.cautionsUnderstood}
      </button>
    </div>
  );
}
