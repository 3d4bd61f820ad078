import { useState } from 'react';

/** A browser may forbid storage altogether; a preference is then simply not remembered. */
export function storedValue(key: string): unknown {
  try {
    const text = localStorage.getItem(STORAGE_PREFIX + key);
    return text === null ? null : (JSON.parse(text) as unknown);
  } catch {
    return null;
  }
}

export function storeValue(key: string, value: unknown): void {
  try {
    localStorage.setItem(STORAGE_PREFIX + key, JSON.stringify(value));
  } catch {
    // Full or forbidden storage must not stop a sweep.
  }
}

const STORAGE_PREFIX = 'tiltsweep.';

/** A choice that outlives the page; `read` gives null for anything it does not know. */
export function usePreference<T>(
  key: string,
  fallback: T,
  read: (stored: unknown) => T | null,
): [T, (value: T) => void] {
  const [value, setValue] = useState<T>(() => read(storedValue(key)) ?? fallback);
  const change = (next: T) => {
    setValue(next);
    storeValue(key, next);
  };
  return [value, change];
}

export function readBoolean(stored: unknown): boolean | null {
  return typeof stored === 'boolean' ? stored : null;
}

export function readOneOf<const T extends string>(...choices: readonly T[]) {
  return (stored: unknown): T | null => choices.find((choice) => choice === stored) ?? null;
}
