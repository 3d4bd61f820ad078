/** So long a page may be busy without a touch on it being noticed, ms. */
const BUSY_MS = 30;

/** To be asked between the steps of long work: lets the page do what waits; true where it was time to. */
export function createPauses(): () => Promise<boolean> {
  let sinceMs = performance.now();
  return async () => {
    if (performance.now() - sinceMs < BUSY_MS) return false;
    await nextTask();
    sinceMs = performance.now();
    return true;
  };
}

/** By a message: a page out of sight is given its timers only now and then. */
function nextTask(): Promise<void> {
  return new Promise((resolve) => {
    const { port1, port2 } = new MessageChannel();
    port1.addEventListener('message', () => {
      port1.close();
      resolve();
    });
    port1.start();
    // oxlint-disable-next-line unicorn/require-post-message-target-origin -- a channel has one origin
    port2.postMessage(null);
  });
}
