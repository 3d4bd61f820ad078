import type { Words } from '../en/index.ts';

export const update: Words['update'] = {
  ready: 'Eine neue Version ist da.',
  use: 'Jetzt verwenden',
  later: 'Später',
  sweepingElsewhere:
    'In einem anderen Tab läuft eine Messung. Erst zu Ende bringen, dann noch einmal.',
  failed:
    'Die neue Version konnte nicht übernehmen. Alle Tabs der App schließen und sie neu öffnen.',
};
