import { useEffect, useState } from 'react';

import type { FilmRecord, FilmShelf } from '../../contract/filmShelf.ts';
import { useApp } from '../shell/appContext.ts';

/** What the film shelf holds; asked again after every change, from whichever tab. */
export function useShelf(which: 'films' | 'unfinished'): readonly FilmRecord[] {
  const { shelf } = useApp();
  const [films, setFilms] = useState<readonly FilmRecord[]>([]);
  useEffect(() => {
    let current = true;
    const fetch = async () => {
      const answer = await asked(shelf, which);
      if (current) setFilms(answer);
    };
    void fetch();
    const stop = shelf.onChange(() => void fetch());
    return () => {
      current = false;
      stop();
    };
  }, [shelf, which]);
  return films;
}

async function asked(shelf: FilmShelf, which: 'films' | 'unfinished') {
  const answer = which === 'films' ? await shelf.films() : await shelf.unfinished();
  return answer.ok ? answer.value : [];
}
