/** The crown that is being drawn: how to draw it, its numbers, its figures as they change. */
import { useState } from 'react';
import { Button, Input, Label, NumberField, TextField } from 'react-aria-components';
import { cancelDrawing, changeSketch, finishDrawing, outlineFromFigures } from '../session/drawing.ts';
import { proposeAt } from '../session/proposing.ts';
import { useApp, useSession, useWords } from '../session/session.ts';
import { splitCrown, startCut } from '../session/splitting.ts';
import { hostNames } from '../state/derived-state.ts';
import { LiveFigures } from './live-figures.tsx';
import { MeasureField } from './measure-field.tsx';
import { PictureLine } from './picture-line.tsx';
import {
  asksPicture,
  cutPieces,
  placed,
  recordOf,
  reshaped,
  type Shape,
  type Sketch,
  vertexRemoved,
} from './sketch.ts';
import { ToolSign } from './tool-sign.tsx';

export function SketchPanel({ sketch }: { readonly sketch: Sketch }) {
  const session = useSession();
  const { outline, picture, cancel } = useWords();
  const isCrown = recordOf(sketch) !== null;
  const asks = asksPicture(sketch) && !isCrown;
  const fromHand = sketch.tool !== 'polygon' || !sketch.closed;
  return (
    <section className="sketch" aria-labelledby="sketch-title">
      <h2 id="sketch-title">
        <ToolSign tool={asks ? 'picture' : sketch.tool} />
        {sketch.treeId} · {asks ? picture.tool : outline.tools[sketch.tool]}
      </h2>
      {fromHand && !asks ? <p className="lead">{outline.how[sketch.tool]}</p> : null}
      <PictureLine sketch={sketch} />
      {asks ? null : <Sizes sketch={sketch} />}
      <LiveFigures />
      <HostField sketch={sketch} />
      <div className="button-row">
        <Button className="button first" isDisabled={!isCrown} onPress={() => void finishDrawing(session)}>
          {outline.finish}
        </Button>
        <Button className="button" onPress={() => void cancelDrawing(session)}>
          {cancel}
        </Button>
        {sketch.tool !== 'polygon' && sketch.before ? (
          <Button className="button quiet" onPress={() => outlineFromFigures(session)}>
            {outline.asVertices}
          </Button>
        ) : null}
        {sketch.vertex !== null && sketch.tool === 'polygon' ? (
          <Button
            className="button quiet"
            onPress={() => changeSketch(session, vertexRemoved(sketch, sketch.vertex as number))}
          >
            {outline.removePoint}
          </Button>
        ) : null}
        <CutButton sketch={sketch} />
      </div>
      <Coordinates sketch={sketch} />
      <p className="lead keyboard-how">{outline.keyboardHow}</p>
    </section>
  );
}

/** A cut begins at one chosen point and ends at another. */
function CutButton({ sketch }: { readonly sketch: Sketch }) {
  const session = useSession();
  const { outline } = useWords();
  const { vertex, cutFrom = null, closed, others } = sketch;
  if (!closed || sketch.tool !== 'polygon' || vertex === null || others.flat().length > 0) return null;
  if (cutFrom === null || cutFrom === vertex) {
    return (
      <Button className="button quiet" onPress={() => startCut(session, sketch, cutFrom === null ? vertex : null)}>
        {cutFrom === null ? outline.cutFrom : outline.cutNot}
      </Button>
    );
  }
  return (
    <Button className="button quiet" isDisabled={cutPieces(sketch) === null} onPress={() => void splitCrown(session)}>
      {outline.cutTo}
    </Button>
  );
}

function Sizes({ sketch }: { readonly sketch: Sketch }) {
  const session = useSession();
  const { outline } = useWords();
  const set = (part: Partial<Shape>): void => changeSketch(session, reshaped(sketch, part));
  const { tool, spreadM, diametersM, bearingDeg, radiiM, vertices } = sketch;
  if (tool === 'polygon') return <p className="count">{outline.points(vertices.length)}</p>;
  if (tool === 'spread')
    return <MeasureField label={outline.spread} valueM={spreadM} change={(value) => set({ spreadM: value })} />;
  if (tool === 'diameters') {
    return (
      <div className="sizes">
        <MeasureField
          label={outline.diameterA}
          valueM={diametersM[0]}
          change={(a) => set({ diametersM: [a, diametersM[1]] })}
        />
        <MeasureField
          label={outline.diameterB}
          valueM={diametersM[1]}
          change={(b) => set({ diametersM: [diametersM[0], b] })}
        />
        <NumberField
          className="number"
          value={bearingDeg}
          minValue={0}
          maxValue={360}
          onChange={(value) => Number.isFinite(value) && set({ bearingDeg: value })}
        >
          <Label>{outline.bearing}</Label>
          <Input />
        </NumberField>
      </div>
    );
  }
  return (
    <fieldset className="sizes radii">
      <legend>{outline.radii}</legend>
      {radiiM.map((radius, i) => (
        <span key={outline.radius((360 / radiiM.length) * i)} className="radius">
          <span aria-hidden="true">{`${(360 / radiiM.length) * i}°`}</span>
          <MeasureField
            hideLabel
            label={outline.radius((360 / radiiM.length) * i)}
            valueM={radius}
            change={(value) => set({ radiiM: radiiM.with(i, value) })}
          />
        </span>
      ))}
    </fieldset>
  );
}

function HostField({ sketch }: { readonly sketch: Sketch }) {
  const session = useSession();
  const { outline } = useWords();
  const hosts = useApp(hostNames);
  return (
    <TextField className="field" value={sketch.host} onChange={(host) => changeSketch(session, { ...sketch, host })}>
      <Label>{outline.host}</Label>
      <Input list="hosts" autoComplete="off" />
      <datalist id="hosts">
        {hosts.map((host) => (
          <option key={host} value={host} />
        ))}
      </datalist>
    </TextField>
  );
}

/** A point by typed longitude and latitude: drawing without a pointer. */
function Coordinates({ sketch }: { readonly sketch: Sketch }) {
  const session = useSession();
  const { outline } = useWords();
  const [lon, setLon] = useState('');
  const [lat, setLat] = useState('');
  const place = (): void => {
    const at = [Number(lon.trim().replace(',', '.')), Number(lat.trim().replace(',', '.'))] as const;
    const usable = lon.trim() !== '' && lat.trim() !== '' && Math.abs(at[0]) <= 180 && Math.abs(at[1]) <= 90;
    if (!usable) {
      session.store.change({ notice: outline.badPosition });
      return;
    }
    if (asksPicture(sketch)) void proposeAt(session, at);
    else changeSketch(session, placed(sketch, at));
    session.map?.flyTo(at);
    setLon('');
    setLat('');
  };
  if (sketch.tool === 'polygon' && sketch.closed) return null;
  return (
    <details className="coordinates">
      <summary>{outline.coordinates}</summary>
      <form
        className="inline-form"
        onSubmit={(event) => {
          event.preventDefault();
          place();
        }}
      >
        <TextField value={lon} onChange={setLon}>
          <Label>{outline.lon}</Label>
          <Input inputMode="decimal" placeholder="-80.0617" />
        </TextField>
        <TextField value={lat} onChange={setLat}>
          <Label>{outline.lat}</Label>
          <Input inputMode="decimal" placeholder="28.3029" />
        </TextField>
        <Button className="button" type="submit">
          {outline.place}
        </Button>
      </form>
    </details>
  );
}
