import { ScreenTitle } from '../parts/ScreenTitle.tsx';

export interface ProofScreenProps {
  readonly wheelId: string;
  readonly entryId: string;
}

export default function ProofScreen({ wheelId, entryId }: ProofScreenProps) {
  return (
    <div>
      <ScreenTitle>
        Proof {wheelId} {entryId}
      </ScreenTitle>
    </div>
  );
}
