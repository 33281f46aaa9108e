/** The command line. `start.mjs` bundles and runs it. */
import { dispatch } from './dispatch.ts';

// A reader that has seen enough, such as `head`, closes the pipe; that is no fault.
process.stdout.on('error', (problem: NodeJS.ErrnoException) => {
  if (problem.code === 'EPIPE') process.exit(process.exitCode ?? 0);
  throw problem;
});

/** npm runs scripts in the project's folder and tells where it was called from. */
const calledByNpm = process.env.npm_lifecycle_event === 'weftlight';

process.exitCode = await dispatch(process.argv.slice(2), {
  folder: (calledByNpm ? process.env.INIT_CWD : undefined) ?? process.cwd(),
  print: (text) => process.stdout.write(text),
  complain: (text) => process.stderr.write(text),
});
