/** The button to the charts beside the ranking. */
import { lazy, Suspense } from 'react';
import { Button, Dialog, DialogTrigger, Heading, Modal, ModalOverlay } from 'react-aria-components';
import { useApp, useWords } from '../session/session.ts';

/** Loaded when somebody first looks. */
const ChartSheet = lazy(() => import('./chart-sheet.tsx').then(({ ChartSheet }) => ({ default: ChartSheet })));

export function Charts() {
  const can = useApp((state) => state.editing.can);
  const words = useWords();
  return (
    <DialogTrigger>
      <Button className="button" isDisabled={can === 'soon'}>
        {words.charts.open}
      </Button>
      <ModalOverlay className="veil" isDismissable>
        <Modal className="modal wide">
          <Dialog>
            <Heading slot="title">{words.charts.title}</Heading>
            <Suspense fallback={<p role="status">{words.charts.wait}</p>}>
              <ChartSheet />
            </Suspense>
            <Button slot="close" className="button">
              {words.close}
            </Button>
          </Dialog>
        </Modal>
      </ModalOverlay>
    </DialogTrigger>
  );
}
