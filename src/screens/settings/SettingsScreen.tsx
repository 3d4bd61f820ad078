import { ScreenTitle } from '../parts/ScreenTitle.tsx';

export default function SettingsScreen() {
  return (
    <div>
      <ScreenTitle>Settings</ScreenTitle>
    </div>
  );
}
