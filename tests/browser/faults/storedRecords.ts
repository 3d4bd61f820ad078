import type { Page } from '@playwright/test';

export interface StoredFilm {
  readonly entryId: string | null;
  readonly stoppedAt?: string;
  readonly pieceCount: number;
  readonly sizeBytes: number;
  readonly mimeType: string;
  readonly notes?: { readonly pieceCount: number; readonly coveredDeg: number };
}

export interface StoredEntry {
  readonly kind: string;
  readonly source?: string;
  readonly filmId?: string | null;
  readonly text?: string;
  readonly reading?: {
    readonly turn: { readonly coveredDeg: number } | null;
    readonly unbalance?: { readonly amountGmm: number; readonly heavySpotDeg: number };
  };
}

/** What lies in the browser's database, read without the program. */
export const filmsOnShelf = (page: Page) => allOf<StoredFilm>(page, 'films');
export const entriesOfLogbook = (page: Page) => allOf<StoredEntry>(page, 'entries');

/** How many pieces of notes lie in the database, of whatever sweep. */
export const piecesOfNotes = async (page: Page) => (await allOf(page, 'sweepNotes')).length;

function allOf<T>(page: Page, store: string): Promise<T[]> {
  return page.evaluate(
    (store) =>
      new Promise<T[]>((resolve, reject) => {
        const opening = indexedDB.open('tiltsweep');
        opening.addEventListener('error', () => reject(opening.error));
        opening.addEventListener('success', () => {
          const all = opening.result.transaction(store).objectStore(store).getAll();
          all.addEventListener('success', () => {
            opening.result.close();
            resolve(all.result as T[]);
          });
        });
      }),
    store,
  );
}
