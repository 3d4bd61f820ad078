import { failed, succeeded, type Outcome } from '../contract/outcome.ts';
import { downTiltFromOrientationDeg } from '../quantities/downTilt.ts';

/** How long the tablet is watched, ms: long enough to average the tremor of an arm's clamp. */
const WATCH_MS = 1200;
/** No event at all within this, ms: there is no sensor, or it is kept from the page. */
const SILENCE_MS = 2500;

/** iPads ask the person; elsewhere the class has no such function. */
interface AskingSensor {
  requestPermission?(): Promise<'granted' | 'denied'>;
}

/**
 * The mean down tilt of the rear camera over about a second, degrees. Must be called from a touch:
 * iPads ask for leave only then.
 */
export async function measureDownTiltDeg(): Promise<Outcome<number, 'sensor-missing'>> {
  if (typeof DeviceOrientationEvent === 'undefined') return failed('sensor-missing');
  const asking = DeviceOrientationEvent as unknown as AskingSensor;
  const leave = (await asking.requestPermission?.().catch(() => 'denied' as const)) ?? 'granted';
  if (leave !== 'granted') return failed('sensor-missing');
  const tilts = await watchedTiltsDeg();
  if (tilts.length === 0) return failed('sensor-missing');
  return succeeded(tilts.reduce((sum, tiltDeg) => sum + tiltDeg, 0) / tilts.length);
}

function watchedTiltsDeg(): Promise<readonly number[]> {
  return new Promise((resolve) => {
    const tilts: number[] = [];
    const end = () => {
      removeEventListener('deviceorientation', take);
      clearTimeout(timer);
      resolve(tilts);
    };
    let timer = setTimeout(end, SILENCE_MS);
    const take = ({ beta, gamma }: DeviceOrientationEvent) => {
      // A desktop browser sends one empty event.
      if (beta === null || gamma === null) return;
      if (tilts.length === 0) {
        clearTimeout(timer);
        timer = setTimeout(end, WATCH_MS);
      }
      tilts.push(downTiltFromOrientationDeg(beta, gamma));
    };
    addEventListener('deviceorientation', take);
  });
}
