import { places } from './places.ts';

/** Where the way up leads from an address, and by which name; null where there is none. */
export interface ParentPlace {
  readonly name: 'shed' | 'wheel' | 'logbook';
  readonly path: string;
}

/** Addresses nest as the job does: a wheel's screens under the wheel, all else under the shed. */
export function parentPlace(path: string): ParentPlace | null {
  const [first, second, third] = path.split('/').filter((part) => part !== '');
  // A running sweep is left by its own stop button, which says what becomes of it.
  if (first === undefined || first === 'sweep') return null;
  if (first === 'wheel' && second !== undefined && third !== undefined) {
    return { name: 'wheel', path: places.wheel(second) };
  }
  if (first === 'logbook' && second !== undefined) return { name: 'logbook', path: places.logbook };
  return { name: 'shed', path: places.shed };
}
