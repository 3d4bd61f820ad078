import type { Notice } from '../../contract/notice.ts';
import { useApp } from '../shell/appContext.ts';
import { setupProblemWords } from '../setup/setupDraft.ts';
import { evidenceText } from '../words/evidence.ts';

/** What was seen, by name: for the person who wants to know why. */
export function EvidenceList({ evidence }: { readonly evidence: Notice['evidence'] }) {
  const { units } = useApp().settings;
  const { where, problem, ...others } = evidence ?? {};
  const inSetup = typeof where === 'string' && typeof problem === 'string';
  const entries = Object.entries(inSetup ? others : (evidence ?? {}));
  return (
    <>
      {inSetup && <p>{setupProblemWords(where, problem, units)}</p>}
      {entries.length > 0 && (
        <dl className="evidence">
          {entries.map(([name, value]) => {
            const text = evidenceText(name, value, units);
            return (
              <div key={name}>
                <dt>{text.name}</dt>
                <dd>{text.value}</dd>
              </div>
            );
          })}
        </dl>
      )}
    </>
  );
}
