import { useMemo, useState } from 'react';
import { Link } from 'wouter';

import type { WheelRecord } from '../../contract/logbook.ts';
import { ScreenTitle } from '../parts/ScreenTitle.tsx';
import { UndoBar, type UndoOffer } from '../parts/UndoBar.tsx';
import { WheelSign } from '../parts/WheelSign.tsx';
import { useApp } from '../shell/appContext.ts';
import { places } from '../shell/places.ts';
import { useWheels } from '../shell/useLogbook.ts';
import { formatClock, formatDay, formatMass, type Units } from '../words/numbers.ts';
import { words } from '../words/words.ts';
import { ArchivePanel } from './ArchivePanel.tsx';
import { StoragePanel } from './StoragePanel.tsx';
import { UnfinishedSweeps } from './UnfinishedSweeps.tsx';
import { wheelsWith } from './wheelsWith.ts';
import './logbook.css';

/** Wheels drawn at first and with each press of "more": thousands at once would be slow to draw. */
const PAGE = 40;

/** Every wheel that was ever read, also those out of the shed, and all that is kept of them. */
export default function LogbookScreen() {
  const { settings } = useApp();
  const wheels = useWheels();
  const [sought, setSought] = useState('');
  const [shown, setShown] = useState(PAGE);
  const [offer, setOffer] = useState<UndoOffer | null>(null);
  const found = useMemo(() => wheelsWith(sought, wheels?.ok ? wheels.value : []), [sought, wheels]);
  const isEmpty = wheels?.ok === true && wheels.value.length === 0;
  const log = words.logbook;
  return (
    <div className="logbook">
      <ScreenTitle>{log.title}</ScreenTitle>
      <UnfinishedSweeps onOffer={setOffer} />
      {isEmpty ? (
        <p className="instruction">{log.empty}</p>
      ) : (
        <section className="logbook-wheels" aria-busy={wheels === null}>
          <label className="logbook-search">
            <span>{log.search}</span>
            <input
              type="search"
              value={sought}
              maxLength={200}
              onChange={(event) => {
                setSought(event.currentTarget.value);
                setShown(PAGE);
              }}
            />
          </label>
          <p role="status">
            {wheels !== null && (found.length > 0 ? log.wheelCount(found.length) : log.noneFound)}
          </p>
          <ul className="logbook-list">
            {found.slice(0, shown).map((wheel) => (
              <li key={wheel.id}>
                <WheelLine wheel={wheel} units={settings.units} />
              </li>
            ))}
          </ul>
          {found.length > shown && (
            <button type="button" className="plain" onClick={() => setShown(shown + PAGE)}>
              {log.more(Math.min(PAGE, found.length - shown))}
            </button>
          )}
        </section>
      )}
      <ArchivePanel onOffer={setOffer} />
      <StoragePanel />
      <UndoBar offer={offer} />
    </div>
  );
}

function WheelLine({ wheel, units }: { readonly wheel: WheelRecord; readonly units: Units }) {
  const { lastReading: last, stage, removedAt } = wheel;
  const log = words.logbook;
  return (
    <Link className="logbook-line" href={places.loggedWheel(wheel.id)}>
      <WheelSign stage={stage} lightSpotDeg={last?.lightSpotDeg ?? null} />
      <span className="logbook-line-words">
        <strong>{wheel.label || log.unnamed}</strong>
        <span>
          {[wheel.place, wheel.tyre, log.stages[stage], removedAt === null ? '' : log.removed]
            .filter((part) => part !== '')
            .join(' · ')}
        </span>
      </span>
      {last !== null && (
        <span className="logbook-line-figure">
          <strong>
            {formatMass(last.amountG, units, last.plusMinusG).text}
            {last.isCheck && ` ${words.job.left}`}
          </strong>
          <span>
            {formatClock(last.lightSpotDeg)} · {formatDay(last.at)}
          </span>
        </span>
      )}
    </Link>
  );
}
