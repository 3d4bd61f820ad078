/** A line between the tabs of one browser: each tells the others that something was changed. */
export interface TabLine {
  tell(): void;
  onNews(heard: () => void): void;
}

export function openTabLine(name: string): TabLine {
  // Missing in old browsers: then a tab sees another's changes when it asks the next time.
  const channel = typeof BroadcastChannel === 'undefined' ? null : new BroadcastChannel(name);
  return {
    // oxlint-disable-next-line unicorn/require-post-message-target-origin -- a channel has one origin
    tell: () => channel?.postMessage('changed'),
    onNews: (heard) => channel?.addEventListener('message', heard),
  };
}
