import type { Notice } from '../../contract/notice.ts';
import { setupProblemWords } from '../setup/setupDraft.ts';
import { formatNumber } from '../words/numbers.ts';
import { evidenceWords } from '../words/readingWords.ts';

/** What was seen, by name: for the person who wants to know why. */
export function EvidenceList({ evidence }: { readonly evidence: Notice['evidence'] }) {
  const { where, problem, ...others } = evidence ?? {};
  const inSetup = typeof where === 'string' && typeof problem === 'string';
  const entries = Object.entries(inSetup ? others : (evidence ?? {}));
  if (entries.length === 0 && !inSetup) return null;
  return (
    <>
      {inSetup && <p>{setupProblemWords(where, problem)}</p>}
      <dl className="evidence">
        {entries.map(([name, value]) => (
          <div key={name}>
            <dt>{evidenceWords[name]?.name ?? name}</dt>
            <dd>
              {typeof value === 'number' ? shortNumber(value) : String(value)}
              {evidenceWords[name]?.unit}
            </dd>
          </div>
        ))}
      </dl>
    </>
  );
}

function shortNumber(value: number): string {
  if (Number.isInteger(value)) return formatNumber(value, 0);
  return formatNumber(value, Math.abs(value) < 10 ? 2 : 1);
}
