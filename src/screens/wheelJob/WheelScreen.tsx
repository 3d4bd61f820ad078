import { ScreenTitle } from '../parts/ScreenTitle.tsx';

export interface WheelScreenProps {
  readonly wheelId: string;
}

export default function WheelScreen({ wheelId }: WheelScreenProps) {
  return (
    <div>
      <ScreenTitle>Wheel {wheelId}</ScreenTitle>
    </div>
  );
}
