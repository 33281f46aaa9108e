import { parseScript, press as playScript, printEvents } from '../../../engine/controls/press.ts';
import { Failure } from '../failure.ts';
import { open } from '../files.ts';
import { needed, oneFile, readWords } from '../options.ts';
import { printJson } from '../tell.ts';
import { type Command, exitCodes } from '../terminal.ts';

export const press: Command = {
  usage: 'FILE --script "MS down [BUTTON];MS up [BUTTON];MS end" [--json]',
  does: 'plays a press script and tells what changes',
  options: [
    ['--script TEXT', 'steps split by ; or new lines, in order of time, the last one an end'],
    ['', 'without a name, the first button of the piece is meant'],
  ],
  async run(words, terminal) {
    const { options, rest } = readWords(words, { script: 'text' });
    const file = oneFile(rest);
    const text = needed(options.script, 'script', '--script "1000 down;1100 up;3000 end"');
    const { score } = await open(file, terminal);
    const { value: script, diagnostics } = parseScript(text, score.piece);
    if (script === undefined) throw new Failure(exitCodes.wrongUsage, diagnostics);
    const events = playScript(score, script);
    if (options.json) printJson(terminal, events);
    else terminal.print(printEvents(events));
    return exitCodes.fine;
  },
};
