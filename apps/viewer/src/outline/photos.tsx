/** Photos of a tree, kept in this browser beside its edits. */
import { useCallback, useEffect, useRef, useState } from 'react';
import { Button } from 'react-aria-components';
import type { PhotoRow } from '../edits/browser-database.ts';
import { newId } from '../edits/new-id.ts';
import { useApp, useSession, useWords } from '../session/session.ts';
import { Sign } from '../shell/sign.tsx';

interface ShownPhoto extends PhotoRow {
  readonly url: string;
}

export function Photos({ treeId }: { readonly treeId: string }) {
  const { database, store } = useSession();
  const project = useApp((state) => state.projectKey);
  const words = useWords();
  const [photos, setPhotos] = useState<readonly ShownPhoto[]>([]);
  const input = useRef<HTMLInputElement>(null);
  const load = useCallback(async () => {
    const rows = await database.photos.where('[project+treeId]').equals([project, treeId]).toArray();
    setPhotos(rows.map((row) => ({ ...row, url: URL.createObjectURL(row.photo) })));
  }, [database, project, treeId]);
  useEffect(() => void load(), [load]);
  useEffect(() => () => photos.forEach(({ url }) => void URL.revokeObjectURL(url)), [photos]);
  const add = async (file: File | undefined): Promise<void> => {
    if (!file) return;
    const row = {
      id: newId(),
      project,
      treeId,
      takenAt: new Date(file.lastModified).toISOString(),
      photo: file,
    };
    await database.photos.put(row).catch(() => store.change({ notice: words.edits.notKept }));
    await load();
  };
  return (
    <div className="photos">
      {photos.map(({ id, url }, i) => (
        <figure key={id}>
          <img src={url} alt={words.tree.photo(treeId, i + 1)} />
          <Button
            className="sign-button"
            aria-label={words.tree.removePhoto(i + 1)}
            onPress={() => void database.photos.delete(id).then(load)}
          >
            <Sign name="close" />
          </Button>
        </figure>
      ))}
      <Button className="button quiet" onPress={() => input.current?.click()}>
        {words.tree.addPhoto}
      </Button>
      <input
        ref={input}
        type="file"
        accept="image/*"
        capture="environment"
        hidden
        aria-label={words.tree.addPhoto}
        onChange={(event) => void add(event.target.files?.[0])}
      />
    </div>
  );
}
