import type { ReactNode } from 'react';
import { Link } from 'wouter';

import { BookIcon, CameraIcon, PlayIcon, PlusIcon, StandIcon, WheelIcon } from '../parts/icons.tsx';
import { places } from '../shell/places.ts';
import { words } from '../words/words.ts';
import { FilmInput } from './FilmInput.tsx';

export interface WaysProps {
  /** Nothing in the shed yet: the ways in lead, and the first wheel is the main one. */
  readonly isFirst: boolean;
  readonly onWheel: () => void;
  readonly onSample: () => void;
  readonly onFiles: (files: readonly File[]) => void;
}

/** Everything that can be begun from here, each one touch. */
export function Ways({ isFirst, onWheel, onSample, onFiles }: WaysProps) {
  const { shed } = words;
  return (
    <nav className="ways" aria-label={shed.ways} data-first={isFirst}>
      <button type="button" className="way way-wheel" data-role="add-wheel" onClick={onWheel}>
        <PlusIcon />
        <span className="way-name">{isFirst ? shed.firstWheel : shed.anotherWheel}</span>
        <span className="way-help">{isFirst ? shed.firstWheelHelp : shed.anotherWheelHelp}</span>
      </button>
      <WayLink href={places.practice} name={shed.practise} help={shed.practiseHelp}>
        <WheelIcon />
      </WayLink>
      <button type="button" className="way" data-role="read-sample" onClick={onSample}>
        <PlayIcon />
        <span className="way-name">{shed.sample}</span>
        <span className="way-help">{shed.sampleHelp}</span>
      </button>
      <FilmInput onFiles={onFiles} />
      <WayLink
        href={places.filmSetup}
        name={shed.camera}
        help={shed.cameraHelp}
        role="open-camera"
        isSmall
      >
        <CameraIcon />
      </WayLink>
      <WayLink href={places.stand} name={shed.stand} help={shed.standHelp} isSmall>
        <StandIcon />
      </WayLink>
      <WayLink href={places.logbook} name={shed.logbook} help={shed.logbookHelp} isSmall>
        <BookIcon />
      </WayLink>
    </nav>
  );
}

function WayLink(props: {
  readonly href: string;
  readonly name: string;
  readonly help: string;
  readonly role?: string;
  /** Only its name is shown; the help is for readers of the screen. */
  readonly isSmall?: boolean;
  readonly children: ReactNode;
}) {
  return (
    <Link
      className={props.isSmall ? 'way way-small' : 'way'}
      href={props.href}
      data-role={props.role}
    >
      {props.children}
      <span className="way-name">{props.name}</span>
      <span className="way-help">{props.help}</span>
    </Link>
  );
}
