/** Opens another project: the sample town, a folder of this machine, or its files one by one. */
import { useRef } from 'react';
import { Button } from 'react-aria-components';
import { openChosen } from '../session/opening.ts';
import { useSession, useWords } from '../session/session.ts';

export function OpenElsewhere() {
  const words = useWords();
  return (
    <details className="folded">
      <summary>{words.openOther}</summary>
      <OpenButtons />
    </details>
  );
}

export function OpenButtons() {
  const session = useSession();
  const words = useWords();
  const folder = useRef<HTMLInputElement>(null);
  const files = useRef<HTMLInputElement>(null);
  const open = async (list: FileList | null): Promise<void> => {
    const chosen = [...(list ?? [])].map((file) => ({ path: file.webkitRelativePath || file.name, file }));
    if (chosen.length === 0 || (await openChosen(session, chosen))) return;
    session.store.change({ notice: words.notAProject });
  };
  return (
    <div className="button-row">
      <Button className="button" onPress={() => folder.current?.click()}>
        {words.openFolder}
      </Button>
      <Button className="button" onPress={() => files.current?.click()}>
        {words.openFiles}
      </Button>
      <a className="button" href="?open=demo">
        {words.openDemo}
      </a>
      <input
        ref={folder}
        type="file"
        hidden
        aria-label={words.openFolder}
        {...{ webkitdirectory: '' }}
        onChange={(event) => void open(event.target.files)}
      />
      <input
        ref={files}
        type="file"
        multiple
        hidden
        aria-label={words.openFiles}
        onChange={(event) => void open(event.target.files)}
      />
    </div>
  );
}
