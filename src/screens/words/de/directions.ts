import type { Words } from '../en/index.ts';

/** Acht Richtungen im Raum ab Azimut 0 im Uhrzeigersinn, wie man sie an der Kamera sagt. */
export const directions: Words['directions'] = [
  'zur Kamera hin',
  'zur Kamera hin und nach links',
  'nach links',
  'nach hinten links',
  'von der Kamera weg',
  'nach hinten rechts',
  'nach rechts',
  'zur Kamera hin und nach rechts',
];
