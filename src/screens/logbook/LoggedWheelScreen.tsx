import { ScreenTitle } from '../parts/ScreenTitle.tsx';

export interface LoggedWheelScreenProps {
  readonly wheelId: string;
}

export default function LoggedWheelScreen({ wheelId }: LoggedWheelScreenProps) {
  return (
    <div>
      <ScreenTitle>Log {wheelId}</ScreenTitle>
    </div>
  );
}
