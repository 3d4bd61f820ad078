import type { FilmShelf } from '../../src/contract/filmShelf.ts';
import { failed, succeeded } from '../../src/contract/outcome.ts';

/** A film shelf with nothing on it and no room. */
export const emptyShelf: FilmShelf = {
  films: async () => succeeded([]),
  unfinished: async () => succeeded([]),
  file: async () => failed('not-found'),
  notes: async () => failed('not-found'),
  begin: async () => failed('storage-blocked'),
  putIn: async () => failed('storage-blocked'),
  link: async () => failed('not-found'),
  remove: async () => failed('not-found'),
  restore: async () => failed('not-found'),
  onChange: () => () => undefined,
};
