import { ScreenTitle } from '../parts/ScreenTitle.tsx';

export default function LogbookScreen() {
  return (
    <div>
      <ScreenTitle>Logbook</ScreenTitle>
    </div>
  );
}
