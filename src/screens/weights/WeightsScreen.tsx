import { ScreenTitle } from '../parts/ScreenTitle.tsx';

export interface WeightsScreenProps {
  readonly wheelId: string;
  readonly entryId: string;
}

export default function WeightsScreen({ wheelId, entryId }: WeightsScreenProps) {
  return (
    <div>
      <ScreenTitle>
        Weights {wheelId} {entryId}
      </ScreenTitle>
    </div>
  );
}
