/** The picture under the table: choosing it, its scale by a known length, where it lies, how faint it is. */
import { type ChangeEvent, useRef, useState } from 'react';
import { useSession } from '../../session/context.ts';
import { useStore } from '../../session/store.ts';
import { Ask } from '../../shell/Ask.tsx';
import { useHand } from '../hand.ts';
import { boxAround } from '../surface/box.ts';
import { placesOn, runsOf } from '../surface/places.ts';
import { NumberEntry } from '../zones/NumberEntry.tsx';
import { garmentsOf, type ShownGarment, sizeOfPicture } from './garments.ts';
import { KnownLengthFields } from './KnownLengthFields.tsx';
import { firstPlacing, type Placing, scaleBounds } from './placing.ts';
import '../../styles/place-garment.css';

/** What a bench of an empty piece shows, in millimetres. */
const emptyBox = { left: -200, right: 200, bottom: -200, top: 200 };

export function GarmentSection() {
  const session = useSession();
  const side = useStore(session.desk.side);
  const shelf = garmentsOf(session);
  const garment = useStore(shelf.shown)[side];
  const file = useRef<HTMLInputElement>(null);
  const [fault, setFault] = useState('');

  const choose = async (event: ChangeEvent<HTMLInputElement>) => {
    const picture = event.target.files?.[0];
    event.target.value = '';
    const piece = session.bench.get().open?.piece;
    if (picture === undefined || piece === undefined) return;
    const size = await sizeOfPicture(picture);
    setFault(size === undefined ? `${picture.name} is no picture that this browser can show.` : '');
    if (size === undefined) return;
    const box = boxAround(placesOn(runsOf(piece), side)) ?? emptyBox;
    const placing = garment?.placing ?? firstPlacing(size, box);
    shelf.put(side, { picture, fileName: picture.name, size, placing, known: null });
  };

  return (
    <div className="garment-fields">
      <input
        ref={file}
        type="file"
        accept="image/png,image/jpeg,image/svg+xml,image/webp"
        hidden
        aria-label="Picture of the garment"
        onChange={choose}
      />
      {garment !== null && <Laid garment={garment} />}
      <div className="garment-buttons">
        <button type="button" className="quiet" onClick={() => file.current?.click()}>
          {garment === null ? 'Photo or drawing …' : 'Another …'}
        </button>
        {garment !== null && (
          <button type="button" className="quiet" onClick={() => shelf.put(side, null)}>
            Take away
          </button>
        )}
        <Ask about="the picture underneath">
          A photo of the coat, or a drawing, to lay pixels on. It stays in this browser: it is sent nowhere,
          and is not part of the piece’s file.
        </Ask>
      </div>
      <p className="whisper">
        {side === 'flat' ? 'Lies under the flat table. ' : 'Lies under the worn table. '}Nothing is uploaded.
      </p>
      {fault !== '' && (
        <p className="fault" role="alert">
          {fault}
        </p>
      )}
    </div>
  );
}

function Laid({ garment }: { garment: ShownGarment }) {
  const session = useSession();
  const hand = useHand();
  const tool = useStore(hand.tool);
  const side = useStore(session.desk.side);
  const shelf = garmentsOf(session);
  const { placing } = garment;
  const set = (change: Partial<Placing>) => shelf.place(side, { ...placing, ...change });
  const toggle = (kind: 'measure' | 'shift') => (tool.kind === kind ? hand.putAway() : hand.take({ kind }));
  /** A first line across the middle, to be dragged or typed over. */
  const measure = () => {
    const { width, height } = garment.size;
    const from = [width / 4, height / 2] as const;
    const to = [(width * 3) / 4, height / 2] as const;
    const millimetres = Math.max(1, Math.round((width / 2) * placing.millimetresPerPixel));
    if (garment.known === null) shelf.put(side, { ...garment, known: { from, to, millimetres } });
    toggle('measure');
  };
  const [x, y] = placing.middle;
  const nothing = () => {};
  return (
    <>
      <div className="garment-head">
        <img src={garment.url} alt="" />
        <span>{garment.fileName}</span>
      </div>
      <label className="garment-opacity">
        <span>Opacity</span>
        <input
          type="range"
          min={5}
          max={100}
          value={Math.round(placing.opacity * 100)}
          style={{ '--share': `${((placing.opacity * 100 - 5) / 95) * 100}%` } as React.CSSProperties}
          onChange={(event) => set({ opacity: Number(event.target.value) / 100 })}
        />
      </label>
      <div className="garment-buttons">
        <button type="button" className="quiet" aria-pressed={tool.kind === 'measure'} onClick={measure}>
          Mark a known length
        </button>
        <button
          type="button"
          className="quiet"
          aria-pressed={tool.kind === 'shift'}
          onClick={() => toggle('shift')}
        >
          Move it
        </button>
      </div>
      {garment.known !== null && <KnownLengthFields garment={garment} known={garment.known} side={side} />}
      <div className="garment-numbers">
        <NumberEntry
          label="x"
          unit="mm"
          value={x}
          min={-1e5}
          max={1e5}
          onChange={(value) => set({ middle: [value, y] })}
          onRest={nothing}
        />
        <NumberEntry
          label="y"
          unit="mm"
          value={y}
          min={-1e5}
          max={1e5}
          onChange={(value) => set({ middle: [x, value] })}
          onRest={nothing}
        />
        <NumberEntry
          label="turned"
          unit="°"
          value={placing.degrees}
          min={-360}
          max={360}
          onChange={(degrees) => set({ degrees })}
          onRest={nothing}
        />
        <NumberEntry
          label="one picture pixel"
          unit="mm"
          step={0.001}
          value={placing.millimetresPerPixel}
          min={scaleBounds.least}
          max={scaleBounds.most}
          onChange={(millimetresPerPixel) => set({ millimetresPerPixel })}
          onRest={nothing}
        />
      </div>
    </>
  );
}
