/** What is seen, as files. */
import { Button } from 'react-aria-components';
import { exportBlocks, exportMap, exportReport } from '../session/exporting.ts';
import { useApp, useSession, useWords } from '../session/session.ts';
import { shownBlocks } from '../state/derived-state.ts';
import { DaySheets } from './sheet-exports.tsx';
import { useMaking } from './use-making.ts';

export function Exports() {
  const session = useSession();
  const shown = useApp(shownBlocks).length;
  const { exports } = useWords();
  const can = useApp((state) => state.editing.can);
  const [drawing, make] = useMaking();
  return (
    <details className="folded exports">
      <summary>{exports.title}</summary>
      <p className="lead">{exports.lead(shown)}</p>
      <div className="button-row">
        <Button className="button" onPress={() => void exportBlocks(session, 'geojson')}>
          {exports.geojson}
        </Button>
        <Button className="button" onPress={() => void exportBlocks(session, 'gpkg')}>
          {exports.gpkg}
        </Button>
        <Button className="button" onPress={() => void exportBlocks(session, 'csv')}>
          {exports.csv}
        </Button>
        <Button className="button" isDisabled={drawing} onPress={() => void make(() => exportMap(session))}>
          {exports.png}
        </Button>
        {can === 'yes' ? (
          <>
            <Button
              className="button"
              isDisabled={drawing}
              onPress={() => void make(() => exportReport(session, 'pdf'))}
            >
              {exports.pdf}
            </Button>
            <Button
              className="button"
              isDisabled={drawing}
              onPress={() => void make(() => exportReport(session, 'html'))}
            >
              {exports.html}
            </Button>
          </>
        ) : null}
      </div>
      {drawing ? (
        <p className="lead" role="status">
          {exports.drawing}
        </p>
      ) : null}
      {can === 'yes' ? <DaySheets /> : null}
    </details>
  );
}
