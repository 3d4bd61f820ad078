import { useSyncExternalStore } from 'react';

import type { StorageState } from '../../contract/storageState.ts';
import type { StorageTroubleCode } from '../../contract/storageTroubles.ts';
import { useApp } from '../shell/appContext.ts';

export function useStorage(): StorageState {
  const { storage } = useApp().logbook;
  return useSyncExternalStore(storage.subscribe, storage.state);
}

/** Less than this free, and the films of a Saturday (four wheels, three sweeps each) do not fit. */
const LOW_BYTES = 300e6;

/**
 * One saved file holds 4 GB; with less than half a gigabyte to go it is time. Said also because not every
 * browser tells how much room there is: Chromium names ten gigabytes more than are used, always.
 */
const LARGE_BYTES = 3.5e9;

/** What has to be said about storage now, the worst first. */
export function storageTrouble(state: StorageState): StorageTroubleCode | null {
  const { trouble, wiped, usedBytes, quotaBytes, isReserveUsed } = state;
  if (trouble !== null) return trouble;
  if (wiped) return 'storage-wiped';
  const isLow = usedBytes !== null && quotaBytes !== null && quotaBytes - usedBytes < LOW_BYTES;
  if (isLow || isReserveUsed) return 'storage-low';
  return usedBytes !== null && usedBytes > LARGE_BYTES ? 'storage-large' : null;
}
