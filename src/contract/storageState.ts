/** Why storage does not take what it is given. */
export type KeepingTrouble =
  | 'storage-full'
  | 'storage-blocked'
  | 'storage-failed'
  | 'storage-newer';

/** How storage stands. */
export interface StorageState {
  /** What keeps the latest changes from being stored; null while all is in storage. */
  readonly trouble: KeepingTrouble | null;
  /** Records that live only in this page. */
  readonly heldCount: number;
  /** True when the logbook that was here at the last visit is gone. */
  readonly wiped: boolean;
  /** Stored records that are none that this program knows; they are left as they are. */
  readonly unreadableCount: number;
  /** What the browser promises: null where it does not say. */
  readonly persisted: boolean | null;
  readonly usedBytes: number | null;
  readonly quotaBytes: number | null;
  /** True when the room kept in reserve had to be given up, or finds no place: little is left. */
  readonly isReserveUsed: boolean;
  /** How much of `usedBytes` is that room. */
  readonly reserveBytes: number;
}

export interface StorageWatch {
  /** The same object until something changes. */
  state(): StorageState;
  subscribe(onChange: () => void): () => void;
  /** Tries once more to store what is held in the page. */
  retry(): Promise<void>;
}
