import { ScreenTitle } from '../parts/ScreenTitle.tsx';

export default function HelpScreen() {
  return (
    <div>
      <ScreenTitle>Help</ScreenTitle>
    </div>
  );
}
