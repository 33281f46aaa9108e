/** How the clip is laid on what is below it. */
import { type BlendName, blendNames } from '../../../engine/look/blend.ts';
import { Choice } from './Choice.tsx';
import { useClipInHand, useClipPart } from './clip-in-hand.ts';
import { Dial } from './Dial.tsx';
import { byteShare } from './measures.ts';
import { RowFault } from './RowFault.tsx';

/** What W3C Compositing and Blending defines, in the words of somebody who holds two gels. */
const blendSays: Readonly<Record<BlendName, string>> = {
  normal: 'It covers what lies below.',
  multiply: 'It colours what lies below as stained glass does; black stays black.',
  screen: 'Its light is added softly and never goes beyond full.',
  darken: 'Of each colour the darker of the two stays.',
  lighten: 'Of each colour the brighter of the two stays.',
  'plus-lighter': 'Its light is added to what lies below, up to full.',
};

const full = 255;

export function LayingRows() {
  const hand = useClipInHand();
  const blend = useClipPart((clip) => clip.blend);
  return (
    <>
      <OpacityRow />
      <Choice
        label="Mixes by"
        value={blend}
        says={blendSays[blend]}
        onChange={(name) => hand.set('blend', { blend: name as BlendName })}
      >
        {blendNames.map((name) => (
          <option key={name}>{name}</option>
        ))}
      </Choice>
      <RowFault row="blend" />
    </>
  );
}

function OpacityRow() {
  const hand = useClipInHand();
  const opacity = useClipPart((clip) => clip.opacity);
  return (
    <Dial
      label="Opacity"
      min={0}
      max={full}
      step={1}
      value={opacity}
      measure={byteShare}
      usual={full}
      onChange={(value) => hand.set('opacity', { opacity: value }, 'drag')}
      onRest={() => hand.rest()}
      onReset={() => hand.set('opacity', { opacity: full })}
    />
  );
}
