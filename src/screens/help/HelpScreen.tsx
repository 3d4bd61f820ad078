import { ScreenTitle } from '../parts/ScreenTitle.tsx';
import { words } from '../words/words.ts';
import { HelpCard } from './HelpCard.tsx';
import { HELP_TOPICS } from './helpTopic.ts';

/** All the help there is, in the order of the job. */
export default function HelpScreen() {
  return (
    <div className="help">
      <ScreenTitle>{words.help.title}</ScreenTitle>
      <div className="help-topics">
        {HELP_TOPICS.map((topic) => (
          <section key={topic} aria-labelledby={`help-${topic}`}>
            <h2 id={`help-${topic}`}>{words.help.topics[topic].name}</h2>
            <HelpCard topic={topic} />
          </section>
        ))}
      </div>
    </div>
  );
}
