/** A new version of the app. */
export const update = {
  ready: 'A new version is ready.',
  use: 'Use it now',
  later: 'Later',
  sweepingElsewhere: 'A sweep runs in another tab. Let it end, then try again.',
  failed: 'The new version could not take over. Close all tabs of the app and open it again.',
};
