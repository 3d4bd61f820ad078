import { ScreenTitle } from '../parts/ScreenTitle.tsx';

export interface BenchScreenProps {
  readonly wheelId: string;
}

export default function BenchScreen({ wheelId }: BenchScreenProps) {
  return (
    <div>
      <ScreenTitle>Bench {wheelId}</ScreenTitle>
    </div>
  );
}
