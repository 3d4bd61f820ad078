import { useState, type ReactNode } from 'react';

import { OnOffSwitch } from '../parts/OnOffSwitch.tsx';
import { ScreenTitle } from '../parts/ScreenTitle.tsx';
import { useApp } from '../shell/appContext.ts';
import type { Units } from '../words/numbers.ts';
import { words } from '../words/words.ts';
import { CameraWhy } from '../sight/CameraWhy.tsx';
import { AfterFields } from './AfterFields.tsx';
import { CameraChoice } from './CameraChoice.tsx';
import { ColourField, LabelField, SenseField } from './OtherFields.tsx';
import { NumberFieldRow } from './NumberFieldRow.tsx';
import { numberIn, withKnown } from './setupDraft.ts';
import { NUMBER_FIELDS, type FieldGroup } from './setupFields.ts';
import { useSetupForm, type SetupForm, type SetupFormProps } from './useSetupForm.ts';
import './setup.css';

export interface SetupScreenProps extends SetupFormProps {
  readonly purpose: 'camera' | 'film';
  readonly filmName: string | null;
  readonly onEarlier: (files: readonly File[]) => void;
  readonly onBack: () => void;
}

export function SetupScreen(props: SetupScreenProps) {
  const { purpose, filmName, earlier, onEarlier, onBack } = props;
  const { units } = useApp().settings;
  const [deviceId, setDeviceId] = useState<string>();
  const form = useSetupForm(props, deviceId, units);
  const isFilm = purpose === 'film';
  return (
    <form className="setup" noValidate onSubmit={form.submit} data-form={purpose}>
      <div className="setup-title">
        <ScreenTitle>{isFilm ? words.setup.filmTitle : words.setup.cameraTitle}</ScreenTitle>
        <p>{filmName === null ? words.setup.cameraLead : words.setup.filmLead(filmName)}</p>
        <p>{words.setup.assumedHelp}</p>
      </div>
      <div className="setup-groups">
        <NumberGroup group="wheel" form={form} units={units} />
        <NumberGroup group="stand" form={form} units={units} />
        <NumberGroup group="camera" form={form} units={units}>
          <PictureFields form={form} />
          {!isFilm && <CameraChoice deviceId={deviceId} onDevice={setDeviceId} />}
        </NumberGroup>
        <NumberGroup group="mark" form={form} units={units}>
          <MarkFields form={form} />
          {isFilm && (
            <AfterFields
              added={form.draft.added}
              earlier={earlier}
              problem={form.lacksEarlier ? words.setup.after.needsEarlier : null}
              weightRadiusMm={numberIn(form.draft, 'wheel.weightRadiusMm')}
              weightStepG={numberIn(form.draft, 'weightStepG')}
              units={units}
              onAdded={(added) => form.change((before) => ({ ...before, added }))}
              onEarlier={onEarlier}
            />
          )}
        </NumberGroup>
      </div>
      {!isFilm && <CameraWhy />}
      <div className="setup-end">
        <p className="setup-problems" role="status">
          {problemsText(form) ?? (isFilm ? null : words.setup.laserCaution)}
        </p>
        <button type="button" className="plain" onClick={onBack}>
          {words.common.back}
        </button>
        <button type="submit" className="main" data-role="start-sweep">
          {/* With the camera this is also the button that asks for it: both names lead here. */}
          <span data-role={isFilm ? undefined : 'start-camera'}>
            {isFilm ? words.setup.readFilm : words.setup.start}
          </span>
        </button>
      </div>
    </form>
  );
}

interface NumberGroupProps {
  readonly group: FieldGroup;
  readonly form: SetupForm;
  readonly units: Units;
  readonly children?: ReactNode;
}

/** The numbers of one group, and below them what else belongs to it. */
function NumberGroup({ group, form, units, children }: NumberGroupProps) {
  const { draft, problems, type, change } = form;
  return (
    <fieldset className="setup-group">
      <legend>{words.setup.groups[group]}</legend>
      {NUMBER_FIELDS.filter((field) => field.group === group).map((field) => (
        <NumberFieldRow
          key={field.path}
          field={field}
          units={units}
          text={draft.texts[field.path] ?? ''}
          known={draft.known.includes(field.path)}
          problem={problems[field.path] ?? null}
          onText={(text) => type(field.path, text)}
          onKnown={(known) => change((before) => withKnown(before, field.path, known))}
        />
      ))}
      {children}
    </fieldset>
  );
}

function PictureFields({ form: { draft, change } }: { readonly form: SetupForm }) {
  return (
    <>
      <SenseField
        sense={draft.turnSense}
        onSense={(turnSense) => change((before) => ({ ...before, turnSense }))}
      />
      {draft.ofFilm.edgePoint !== undefined && (
        <OnOffSwitch
          label={words.setup.edge}
          help={words.setup.edgeHelp}
          isOn={draft.usesEdge}
          onSwitch={(usesEdge) => change((before) => ({ ...before, usesEdge }))}
        />
      )}
    </>
  );
}

function MarkFields({ form: { draft, change } }: { readonly form: SetupForm }) {
  return (
    <>
      <ColourField
        colour={draft.colour}
        onColour={(colour) => change((before) => ({ ...before, colour }))}
      />
      <LabelField
        label={draft.label}
        onLabel={(label) => change((before) => ({ ...before, label }))}
      />
    </>
  );
}

/** How many fields want mending, and their names; null when none does. */
function problemsText({ problems }: SetupForm): string | null {
  const paths = Object.keys(problems);
  if (paths.length === 0) return null;
  const names = paths.map(
    (path) => NUMBER_FIELDS.find((field) => field.path === path)?.name ?? path,
  );
  return `${words.setup.fixFirst(paths.length)} ${names.join(', ')}`;
}
