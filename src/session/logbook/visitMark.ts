/**
 * A mark beside the database that says "there was something in it". With the mark there and the
 * database gone, the browser has cleared its storage; with both gone nobody can tell.
 */
const MARK = 'tiltsweep.logbookBegun';

export function wasHereBefore(): boolean {
  try {
    return localStorage.getItem(MARK) !== null;
  } catch {
    return false;
  }
}

export function markVisit(): void {
  try {
    localStorage.setItem(MARK, '1');
  } catch {
    // Without the mark a later loss is only not told of.
  }
}
