import { useState, type FormEvent } from 'react';

import type { SweepSetup } from '../../contract/setup.ts';
import { OnOffSwitch } from '../parts/OnOffSwitch.tsx';
import { ScreenTitle } from '../parts/ScreenTitle.tsx';
import { useApp } from '../shell/appContext.ts';
import { words } from '../words/words.ts';
import { AfterFields } from './AfterFields.tsx';
import { CameraChoice } from './CameraChoice.tsx';
import { ColourField, LabelField, SenseField } from './OtherFields.tsx';
import { NumberFieldRow } from './NumberFieldRow.tsx';
import { checkDraft, numberIn, withKnown, withText, type SetupDraft } from './setupDraft.ts';
import { NUMBER_FIELDS, type FieldGroup } from './setupFields.ts';
import './setup.css';

export interface SetupScreenProps {
  readonly purpose: 'camera' | 'film';
  readonly filmName: string | null;
  readonly draft: SetupDraft;
  /** Of a film: the reading of the sweep before it, and the way to choose one. */
  readonly earlier: string | null;
  readonly onEarlier: (files: readonly File[]) => void;
  readonly onSubmit: (setup: SweepSetup, draft: SetupDraft, deviceId?: string) => void;
  readonly onBack: () => void;
}

const GROUPS: readonly FieldGroup[] = ['wheel', 'stand', 'camera', 'mark'];

export function SetupScreen(props: SetupScreenProps) {
  const { purpose, filmName, onSubmit, onBack } = props;
  const { units } = useApp().settings;
  const [draft, setDraft] = useState(props.draft);
  const [problems, setProblems] = useState<Readonly<Record<string, string>>>({});
  const [deviceId, setDeviceId] = useState<string>();
  const [lacksEarlier, setLacksEarlier] = useState(false);

  const submit = (event: FormEvent<HTMLFormElement>) => {
    event.preventDefault();
    const checked = checkDraft(draft, units);
    const lacks = draft.added.length > 0 && props.earlier === null;
    setLacksEarlier(lacks);
    if (checked.ok && lacks) return;
    if (checked.ok) {
      onSubmit(checked.setup, draft, deviceId);
      return;
    }
    setProblems(checked.problems);
    const [first] = Object.keys(checked.problems);
    const input = first === undefined ? null : event.currentTarget.elements.namedItem(first);
    if (input instanceof HTMLElement) input.focus();
  };
  const change = (path: string, text: string) => {
    setDraft((before) => withText(before, path, text));
    setProblems((before) => Object.fromEntries(Object.entries(before).filter(([p]) => p !== path)));
  };
  const count = Object.keys(problems).length;

  return (
    <form className="setup" noValidate onSubmit={submit} data-form={purpose}>
      <div className="setup-title">
        <ScreenTitle>
          {purpose === 'film' ? words.setup.filmTitle : words.setup.cameraTitle}
        </ScreenTitle>
        <p>{filmName === null ? words.setup.cameraLead : words.setup.filmLead(filmName)}</p>
        <p>{words.setup.assumedHelp}</p>
      </div>
      <div className="setup-groups">
        {GROUPS.map((group) => (
          <fieldset key={group} className="setup-group">
            <legend>{words.setup.groups[group]}</legend>
            {NUMBER_FIELDS.filter((field) => field.group === group).map((field) => (
              <NumberFieldRow
                key={field.path}
                field={field}
                units={units}
                text={draft.texts[field.path] ?? ''}
                known={draft.known.includes(field.path)}
                problem={problems[field.path] ?? null}
                onText={(text) => change(field.path, text)}
                onKnown={(known) => setDraft((before) => withKnown(before, field.path, known))}
              />
            ))}
            {group === 'mark' && (
              <>
                <ColourField
                  colour={draft.colour}
                  onColour={(colour) => setDraft((before) => ({ ...before, colour }))}
                />
                <LabelField
                  label={draft.label}
                  onLabel={(label) => setDraft((before) => ({ ...before, label }))}
                />
              </>
            )}
            {group === 'mark' && purpose === 'film' && (
              <AfterFields
                added={draft.added}
                earlier={props.earlier}
                problem={
                  lacksEarlier && props.earlier === null ? words.setup.after.needsEarlier : null
                }
                weightRadiusMm={numberIn(draft, 'wheel.weightRadiusMm')}
                weightStepG={numberIn(draft, 'weightStepG')}
                units={units}
                onAdded={(added) => setDraft((before) => ({ ...before, added }))}
                onEarlier={props.onEarlier}
              />
            )}
            {group === 'camera' && (
              <SenseField
                sense={draft.turnSense}
                onSense={(turnSense) => setDraft((before) => ({ ...before, turnSense }))}
              />
            )}
            {group === 'camera' && draft.ofFilm.edgePoint !== undefined && (
              <OnOffSwitch
                label={words.setup.edge}
                help={words.setup.edgeHelp}
                isOn={draft.usesEdge}
                onSwitch={(usesEdge) => setDraft((before) => ({ ...before, usesEdge }))}
              />
            )}
            {group === 'camera' && purpose === 'camera' && (
              <CameraChoice deviceId={deviceId} onDevice={setDeviceId} />
            )}
          </fieldset>
        ))}
      </div>
      <div className="setup-end">
        <p className="setup-problems" role="status">
          {count > 0
            ? `${words.setup.fixFirst(count)} ${namesOf(problems).join(', ')}`
            : purpose === 'camera' && words.setup.laserCaution}
        </p>
        <button type="button" className="plain" onClick={onBack}>
          {words.common.back}
        </button>
        <button type="submit" className="main" data-role="start-sweep">
          {/* With the camera this is also the button that asks for it: both names lead here. */}
          <span data-role={purpose === 'camera' ? 'start-camera' : undefined}>
            {purpose === 'camera' ? words.setup.start : words.setup.readFilm}
          </span>
        </button>
      </div>
    </form>
  );
}

function namesOf(problems: Readonly<Record<string, string>>): string[] {
  return Object.keys(problems).map(
    (path) => NUMBER_FIELDS.find((field) => field.path === path)?.name ?? path,
  );
}
