import { ScreenTitle } from '../parts/ScreenTitle.tsx';

export interface LeadScreenProps {
  readonly wheelId: string;
  readonly entryId: string;
}

export default function LeadScreen({ wheelId, entryId }: LeadScreenProps) {
  return (
    <div>
      <ScreenTitle>
        Lead {wheelId} {entryId}
      </ScreenTitle>
    </div>
  );
}
