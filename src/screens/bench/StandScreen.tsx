import { ScreenTitle } from '../parts/ScreenTitle.tsx';

export default function StandScreen() {
  return (
    <div>
      <ScreenTitle>Stand</ScreenTitle>
    </div>
  );
}
