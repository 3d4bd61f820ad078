import { useApp } from '../shell/appContext.ts';
import { LogbookGap } from '../shell/LogbookGap.tsx';
import { useAcceptedSweep } from '../shell/useAcceptedSweep.ts';
import { proofOf } from '../../job/proof.ts';
import { sweepPair } from '../../job/sweepPair.ts';
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
  if (!proof.ok)
    return <LogbookGap answer={{ ok: false, failure: { code: 'not-found', evidence: {} } }} />;
  return <ProofView pair={pair} proof={proof.value} wheel={wheel} units={settings.units} />;
}
