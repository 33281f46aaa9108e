/** What has to be cut and soldered: every wire of the data line, how long, and what is wise. */
import { useState } from 'react';
import {
  cutLength,
  endsMillimetres,
  type Lead,
  leadsOf,
  stepMillimetres,
  usualSlack,
} from '../../../../engine/layout/wires.ts';
import type { Piece } from '../../../../engine/piece/schema.ts';
import { useSession } from '../../session/context.ts';
import { Ask } from '../../shell/Ask.tsx';
import { lengthWords } from '../words.ts';
import { NumberEntry } from '../zones/NumberEntry.tsx';
import { pointing } from '../zones/point.ts';
import '../../styles/place-wires.css';

export function WiresSection({ piece }: { piece: Piece }) {
  const [percent, setPercent] = useState(usualSlack * 100);
  return (
    <div className="wires">
      <div className="wire-slack">
        <NumberEntry
          label="Slack"
          unit="%"
          value={percent}
          min={0}
          max={100}
          onChange={setPercent}
          onRest={() => {}}
        />
        <Ask about="the slack of wires">
          Cloth moves, and a wire that is just long enough pulls at its joints. A tenth more is common
          practice; more where the piece bends.
        </Ask>
      </div>
      {piece.lines.map((line) => (
        <LineOfWires key={line.pin} line={line} slack={percent / 100} />
      ))}
      <Wisdom />
    </div>
  );
}

function LineOfWires({ line, slack }: { line: Piece['lines'][number]; slack: number }) {
  const leads = leadsOf(line.runs);
  const total = leads.reduce((sum, lead) => sum + cutLength(lead.straightMillimetres, slack), 0);
  return (
    <>
      <ol className="wire-list">
        <li>
          <span>
            board, pin {line.pin} → {line.runs[0]!.name}
          </span>
          <span className="whisper">measure it</span>
        </li>
        {leads.map((lead) => (
          <LeadRow key={lead.from.address} lead={lead} slack={slack} />
        ))}
      </ol>
      {leads.length > 0 && (
        <p className="wire-total">
          <span>
            {leads.length === 1 ? '1 wire' : `${leads.length} wires`} of each kind
            <Ask about="the lengths of wires">
              Straight from pixel to pixel on the flat table, the slack, and {endsMillimetres} mm for both
              ends, rounded up to {stepMillimetres} mm. Data, plus and minus each need one; the wire from the
              board is not counted.
            </Ask>
          </span>
          <b>{lengthWords(total)}</b>
        </p>
      )}
    </>
  );
}

function LeadRow({ lead, slack }: { lead: Lead; slack: number }) {
  const session = useSession();
  const { kind, from, to, straightMillimetres } = lead;
  const words = kind === 'between' ? `${from.run} → ${to.run}` : `${from.run}, over ${gapWords(lead)}`;
  return (
    <li>
      <button
        type="button"
        title={`${lengthWords(straightMillimetres)} as the crow flies`}
        {...pointing(session, () => [from.address, to.address])}
      >
        <span>{words}</span>
        <b>{lengthWords(cutLength(lead.straightMillimetres, slack))}</b>
      </button>
    </li>
  );
}

/** `pixel 5`, `pixels 5 to 7`: the positions that are cut out. */
function gapWords({ from, to }: Lead): string {
  const [first, last] = [from.position + 1, to.position - 1];
  return first === last ? `pixel ${first}` : `pixels ${first} to ${last}`;
}

/** Common practice, no source. */
function Wisdom() {
  return (
    <details className="wire-wisdom">
      <summary>Before you solder</summary>
      <ul>
        <li>Take the supply off first. Join minus to minus before anything else, and part it last.</li>
        <li>Hold every joint so that nothing pulls at it: a stitch, tape or heat-shrink beside it.</li>
        <li>
          Insulate each joint by itself; bare ends that touch are a short circuit, and cells get hot fast.
        </li>
        <li>Mind the arrow on the strip: data goes in where it comes from.</li>
        <li>Who knows the rules of your place and of the venue has the last word.</li>
      </ul>
    </details>
  );
}
