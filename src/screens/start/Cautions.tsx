import { words } from '../words/words.ts';
import './start.css';

/** Shown once at the start, and again on demand. */
export function Cautions({ onUnderstood }: { readonly onUnderstood: () => void }) {
  return (
    <section className="cautions" aria-labelledby="cautions-title">
      <h2 id="cautions-title">{words.start.cautionsTitle}</h2>
      <ul>
        {words.cautions.map((caution) => (
          <li key={caution.about}>
            <strong>{caution.about}.</strong> {caution.say}
          </li>
        ))}
      </ul>
      <button type="button" className="plain" onClick={onUnderstood}>
        {words.start.cautionsUnderstood}
      </button>
    </section>
  );
}
