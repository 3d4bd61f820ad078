import { words } from '../words/words.ts';
import { CautionList } from './CautionList.tsx';
import './start.css';

/** Shown until they are understood; afterwards they stand in the settings. */
export function Cautions({ onUnderstood }: { readonly onUnderstood: () => void }) {
  return (
    <section className="cautions" aria-labelledby="cautions-title">
      <h2 id="cautions-title">{words.start.cautionsTitle}</h2>
      <CautionList />
      <button type="button" className="plain" onClick={onUnderstood}>
        {words.start.cautionsUnderstood}
      </button>
    </section>
  );
}
