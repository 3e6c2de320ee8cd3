/** A tree that stands here and on no map. */

import { METRES_PER_FOOT } from '@crownfall/geometry';
import { useState } from 'react';
import { useShown, useUnits, useWalk, useWords } from '../doing/walk-session.ts';
import { packOf } from '../doing/walk-state.ts';
import { addTree } from '../doing/walking.ts';
import { Chips, ScreenHead, Stepper } from '../parts/parts.tsx';
import { lengthOf } from '../parts/quantities-shown.ts';
import { PlaceOnMap } from './place-on-map.tsx';

const UNKNOWN = '';
const HOSTS_OFFERED = 6;
const WIDEST_M = 40;

export function NewTreeScreen() {
  const walk = useWalk();
  const { newTree } = useWords();
  const units = useUnits();
  const known = useShown((state) => packOf(state)?.hosts ?? NONE);
  const stepM = units === 'us' ? 2 * METRES_PER_FOOT : 0.5;
  const [steps, setSteps] = useState(units === 'us' ? 13 : 16);
  const [host, setHost] = useState(UNKNOWN);
  const hosts = [...known.slice(0, HOSTS_OFFERED), UNKNOWN];
  const words = Object.fromEntries(hosts.map((each) => [each, each === UNKNOWN ? newTree.unknown : each]));
  const spreadM = Math.round(steps * stepM * 100) / 100;
  const add = (): void => {
    const at = walk.mapMiddle?.();
    if (at) void addTree(walk, { at, host, spreadM });
  };
  return (
    <main className="tree-card over-map">
      <ScreenHead title={newTree.title} />
      <div className="tree-text">
        <PlaceOnMap how={newTree.where} here={newTree.here} />
        <Stepper
          label={newTree.spread}
          shown={lengthOf(spreadM, units)}
          less={newTree.lessSpread}
          more={newTree.moreSpread}
          step={(by) => setSteps(Math.min(Math.floor(WIDEST_M / stepM), Math.max(1, steps + by)))}
        />
        <Chips
          label={newTree.host}
          of={hosts}
          words={words}
          value={host}
          choose={(chosen) => setHost(chosen ?? UNKNOWN)}
        />
      </div>
      <div className="thumb-bar">
        <button type="button" className="main wide" onClick={add}>
          {newTree.add}
        </button>
      </div>
    </main>
  );
}

const NONE: readonly string[] = [];
