import type { Notice } from '../../contract/notice.ts';
import { formatNumber } from '../words/numbers.ts';
import { evidenceWords } from '../words/readingWords.ts';

/** What was seen, by name: for the person who wants to know why. */
export function EvidenceList({ evidence }: { readonly evidence: Notice['evidence'] }) {
  const entries = Object.entries(evidence ?? {});
  if (entries.length === 0) return null;
  return (
    <dl className="evidence">
      {entries.map(([name, value]) => (
        <div key={name}>
          <dt>{evidenceWords[name] ?? name}</dt>
          <dd>{typeof value === 'number' ? shortNumber(value) : String(value)}</dd>
        </div>
      ))}
    </dl>
  );
}

function shortNumber(value: number): string {
  if (Number.isInteger(value)) return formatNumber(value, 0);
  return formatNumber(value, Math.abs(value) < 10 ? 2 : 1);
}
