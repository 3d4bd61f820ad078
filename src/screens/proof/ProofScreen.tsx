import { Link } from 'wouter';

import { ScreenTitle } from '../parts/ScreenTitle.tsx';
import { useApp } from '../shell/appContext.ts';
import { LogbookGap } from '../shell/LogbookGap.tsx';
import { places } from '../shell/places.ts';
import { useAcceptedSweep } from '../shell/useAcceptedSweep.ts';
import { proofOf } from '../../job/proof.ts';
import { sweepPair } from '../../job/sweepPair.ts';
import { words } from '../words/words.ts';
import { ProofView } from './ProofView.tsx';
import './proof.css';

export interface ProofScreenProps {
  readonly wheelId: string;
  readonly entryId: string;
}

export default function ProofScreen({ wheelId, entryId }: ProofScreenProps) {
  const { settings } = useApp();
  const parts = useAcceptedSweep(wheelId, entryId);
  if (!parts?.ok) return <LogbookGap answer={parts} />;
  const { wheel, stand, entries, sweep } = parts.value;
  const pair = sweepPair(sweep, entries);
  const proof = proofOf(pair, wheel, stand);
  if (!proof.ok) return <NoVerdict wheelId={wheelId} entryId={entryId} />;
  return <ProofView pair={pair} proof={proof.value} wheel={wheel} units={settings.units} />;
}

/** The sweep is there, but what is left cannot be judged: its measures do not go together. */
function NoVerdict({ wheelId, entryId }: ProofScreenProps) {
  return (
    <div className="proof-say">
      <ScreenTitle>{words.proof.noVerdict}</ScreenTitle>
      <p className="instruction">{words.proof.noVerdictWhy}</p>
      <div className="read-actions">
        <Link className="main" href={places.bench(wheelId)}>
          {words.proof.toBench}
        </Link>
        <Link className="plain" href={places.reading(wheelId, entryId)}>
          {words.proof.toReading}
        </Link>
      </div>
    </div>
  );
}
