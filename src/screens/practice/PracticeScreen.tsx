import { ScreenTitle } from '../parts/ScreenTitle.tsx';

export default function PracticeScreen() {
  return (
    <div>
      <ScreenTitle>Practice</ScreenTitle>
    </div>
  );
}
