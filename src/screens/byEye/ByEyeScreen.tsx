import { ScreenTitle } from '../parts/ScreenTitle.tsx';

export interface ByEyeScreenProps {
  readonly wheelId: string;
}

export default function ByEyeScreen({ wheelId }: ByEyeScreenProps) {
  return (
    <div>
      <ScreenTitle>By eye {wheelId}</ScreenTitle>
    </div>
  );
}
