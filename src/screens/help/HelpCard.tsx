import { words } from '../words/words.ts';
import { HELP_DRAWINGS } from './helpDrawings.tsx';
import type { HelpTopic } from './helpTopic.ts';
import './help.css';

/** A drawing with numbers, and a line for each of them. */
export function HelpCard({ topic }: { readonly topic: HelpTopic }) {
  const { lines } = words.help.topics[topic];
  return (
    <div className="help-card">
      <svg className="help-drawing" viewBox="0 0 420 270" aria-hidden="true" focusable="false">
        {HELP_DRAWINGS[topic]}
      </svg>
      <ol className="help-lines">
        {lines.map((line) => (
          <li key={line}>{line}</li>
        ))}
      </ol>
    </div>
  );
}
