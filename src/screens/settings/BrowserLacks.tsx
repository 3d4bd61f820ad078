import { words } from '../words/words.ts';
import { browserLacks } from './browserLacks.ts';

/** What cannot work in this browser, and what to do about it; nothing where all can. */
export function BrowserLacks() {
  const lacks = browserLacks();
  if (lacks.length === 0) return null;
  return (
    <section className="group" data-role="browser-lacks">
      <h2>{words.settings.browser}</h2>
      <ul>
        {lacks.map((part) => (
          <li key={part} data-part={part}>
            {words.settings.browserLacks[part]}
          </li>
        ))}
      </ul>
    </section>
  );
}
