/** The keys, in a dialog. */
import { Button, Dialog, DialogTrigger, Heading, Modal, ModalOverlay } from 'react-aria-components';
import { useWords } from '../session/session.ts';

export function KeysHelp() {
  const words = useWords();
  return (
    <DialogTrigger>
      <Button className="button">{words.settings.keys}</Button>
      <ModalOverlay className="veil" isDismissable>
        <Modal className="modal">
          <Dialog>
            <Heading slot="title">{words.keys.title}</Heading>
            <table className="keys">
              <tbody>
                {words.keys.rows.map(([keys, does]) => (
                  <tr key={keys}>
                    <th scope="row">
                      <kbd>{keys}</kbd>
                    </th>
                    <td>{does}</td>
                  </tr>
                ))}
              </tbody>
            </table>
            <Button slot="close" className="button">
              {words.close}
            </Button>
          </Dialog>
        </Modal>
      </ModalOverlay>
    </DialogTrigger>
  );
}
