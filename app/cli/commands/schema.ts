import { pieceJsonSchema } from '../../../engine/piece/jsonSchema.ts';
import { wrongUsage } from '../failure.ts';
import { readWords } from '../options.ts';
import { printJson } from '../tell.ts';
import { type Command, exitCodes } from '../terminal.ts';

export const schema: Command = {
  usage: '',
  does: 'prints the JSON Schema of the piece file',
  options: [],
  async run(words, terminal) {
    const { rest } = readWords(words, {});
    if (rest.length > 0) throw wrongUsage('file-unexpected', 'The schema needs no file.', 'Leave it out.');
    printJson(terminal, pieceJsonSchema());
    return exitCodes.fine;
  },
};
