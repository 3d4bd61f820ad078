import type { Words } from '../en/index.ts';

export const evidence: Words['evidence'] = {
  coveredDeg: ['gesehene Drehung'],
  neededDeg: ['nötige Drehung'],
  usualShare: ['Anteil der Linie, der meist zu sehen war'],
  inlierShare: ['Anteil der Linie auf einer Kurve'],
  residualPx: ['Linie neben ihrer Kurve um'],
  spanDeg: ['Linie rund um die Lauffläche zu sehen'],
  turnWithoutLineDeg: ['ohne sichtbare Linie gedreht'],
  readUntilS: ['gelesen bis', '\u00a0s'],
  changeAboveOutline: ['Wechsel über dem Umriss, Stufen'],
  changeBelowIt: ['Wechsel darunter, Stufen'],
  shareOfTreadCovered: ['verdeckter Anteil der Lauffläche'],
  secondsWithoutLine: ['ohne die Linie', '\u00a0s'],
  longestSeconds: ['längste Strecke davon', '\u00a0s'],
  movedPx: ['Linie neben ihrem Platz um'],
  aboutSecond: ['bei etwa', '\u00a0s'],
  degreesBetweenPictures: ['von Bild zu Bild gedreht', '°'],
  widestGapDeg: ['größtes Loch'],
  rockingRmsMm: ['Schaukeln an der Kante'],
  radius95Mm: ['± des Kantenhubs'],
  standLeanMrad: ['Neigung des Gestells'],
};
