import { words } from '../words/words.ts';

/** What to beware of, each with what to do. */
export function CautionList() {
  return (
    <ul className="caution-list">
      {words.cautions.map((caution) => (
        <li key={caution.about}>
          <strong>{caution.about}.</strong> {caution.say}
        </li>
      ))}
    </ul>
  );
}
