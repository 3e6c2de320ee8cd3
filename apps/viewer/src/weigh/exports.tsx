/** What is seen, as files. */
import { useState } from 'react';
import { Button } from 'react-aria-components';
import { exportBlocks, exportMap } from '../session/exporting.ts';
import { useApp, useSession, useWords } from '../session/session.ts';
import { shownBlocks } from '../state/derived-state.ts';

export function Exports() {
  const session = useSession();
  const shown = useApp(shownBlocks).length;
  const { exports } = useWords();
  const [drawing, setDrawing] = useState(false);
  const draw = async (): Promise<void> => {
    setDrawing(true);
    try {
      await exportMap(session);
    } catch (error) {
      session.store.change({ notice: String(error) });
    } finally {
      setDrawing(false);
    }
  };
  return (
    <details className="folded exports">
      <summary>{exports.title}</summary>
      <p className="lead">{exports.lead(shown)}</p>
      <div className="button-row">
        <Button className="button" onPress={() => exportBlocks(session, 'geojson')}>
          {exports.geojson}
        </Button>
        <Button className="button" onPress={() => exportBlocks(session, 'gpkg')}>
          {exports.gpkg}
        </Button>
        <Button className="button" onPress={() => exportBlocks(session, 'csv')}>
          {exports.csv}
        </Button>
        <Button className="button" isDisabled={drawing} onPress={() => void draw()}>
          {drawing ? exports.drawing : exports.png}
        </Button>
      </div>
    </details>
  );
}
