import type { RefusalWords } from './refusals.ts';

/**
 * What can go wrong with keeping things. None of it stops the job: what cannot be stored is held in
 * the page, and said. Same form as the refusals; none of these stands in for a reading.
 */
export const STORAGE_TROUBLES = {
  'storage-full': {
    cause: 'The storage of this browser is full. The latest entries live only in this open page.',
    remedy: 'Delete films in the logbook or save the logbook to a file, then try again.',
    secondTime:
      'Save the logbook to a file now, before this page is closed, and free space on the tablet.',
  },
  'storage-blocked': {
    cause: 'This browser keeps nothing for this page. Entries live only until the page is closed.',
    remedy: 'Leave the private window or allow this page to store data, then try again.',
    secondTime: 'Save the logbook to a file before this page is closed.',
  },
  'storage-failed': {
    cause: 'The browser could not store the latest entries. They live only in this open page.',
    remedy: 'Try again. Close other windows of this program if it stays so.',
    secondTime: 'Save the logbook to a file before this page is closed, then restart the browser.',
  },
  'storage-newer': {
    cause: 'The logbook was opened by a newer version of this program in another window.',
    remedy: 'Reload this page.',
    secondTime: 'Close every window of this program, then open it once.',
  },
  'storage-wiped': {
    cause: 'The storage of this browser was cleared: the logbook that was here is gone.',
    remedy: 'Bring it back from the file that you saved last.',
    secondTime:
      'Install the program on the home screen: then the browser does not clear it by itself.',
  },
  'storage-low': {
    cause: 'The storage of this browser is nearly full.',
    remedy: 'Delete films that are no longer needed, or save the logbook with its films to a file.',
    secondTime: 'Free space on the tablet: the browser gets a share of what is free.',
  },
  'storage-large': {
    cause: 'Films take nearly as much room as one saved file can hold (4 GB).',
    remedy: 'Save the logbook with its films to a file now, then delete films here.',
    secondTime: 'Delete films of wheels that are proved: their readings stay.',
  },
  'film-not-kept': {
    cause: 'This browser cannot record the film. The reading is kept, its film is not.',
    remedy: 'Nothing needs to be done: the sweep is measured as always.',
    secondTime: 'Use another browser when films matter.',
  },
} as const satisfies Record<string, RefusalWords>;

export type StorageTroubleCode = keyof typeof STORAGE_TROUBLES;
