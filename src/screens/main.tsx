import { StrictMode } from 'react';
import { createRoot } from 'react-dom/client';

import type { SweepSession } from '../contract/session.ts';
import { App } from './App.tsx';

/** Puts the screens into the page; they live as long as it does. */
export function mountScreens(place: HTMLElement, session: SweepSession): void {
  createRoot(place).render(
    <StrictMode>
      <App session={session} />
    </StrictMode>,
  );
}
