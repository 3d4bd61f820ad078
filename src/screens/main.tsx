import { StrictMode } from 'react';
import { createRoot } from 'react-dom/client';

import { App } from './App.tsx';
import type { AppParts } from './shell/appContext.ts';
import { applyStoredLanguage } from './state/useLanguage.ts';

/** Puts the screens into the page; they live as long as it does. */
export async function mountScreens(place: HTMLElement, parts: AppParts): Promise<void> {
  await applyStoredLanguage();
  createRoot(place).render(
    <StrictMode>
      <App {...parts} />
    </StrictMode>,
  );
}
