import { builtApp } from '../../src/server/builtApp.ts';

/** Builds the app into `dist` unless what is there is newer than everything it is made from. */
export function buildFresh(root: string): string {
  const built = builtApp(root);
  if (!built.ok) throw new Error('the app could not be built');
  return built.value;
}
