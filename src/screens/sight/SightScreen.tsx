import { ScreenTitle } from '../parts/ScreenTitle.tsx';

export interface SightScreenProps {
  readonly wheelId: string;
}

export default function SightScreen({ wheelId }: SightScreenProps) {
  return (
    <div>
      <ScreenTitle>Sight {wheelId}</ScreenTitle>
    </div>
  );
}
