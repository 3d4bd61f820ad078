import type { Words } from '../en/index.ts';

export const licences: Words['licences'] = {
  title: 'Lizenzen',
  lead: 'Die App enthält Arbeit von anderen. Einen Namen öffnen, um die Bedingungen zu lesen.',
  source: (address) => `Quelle: ${address}`,
  textOf: (name) => `Lizenz von ${name}`,
  publicDomain: 'Gemeinfrei: Die Urheber haben auf alle Rechte verzichtet.',
  unreachable:
    'Die Liste konnte nicht geladen werden. Mit dem Netz verbinden, aus dem die App kam, und noch einmal öffnen.',
};
