/** Programs that the tests run beside Node: compilers, emulators, a browser. Each is tried, not only looked for. */
import { spawnSync } from 'node:child_process';

/** True if the program runs and is content with its input. */
function works(command, args, input = '') {
  const { status } = spawnSync(command, args, { input, stdio: ['pipe', 'ignore', 'ignore'] });
  return status === 0;
}

const tools = [
  {
    name: 'Chromium',
    packages: ['chromium'],
    isThere: () => works(process.env.CHROMIUM ?? '/usr/bin/chromium', ['--version']),
  },
  {
    name: 'avr-g++ with avr-libc',
    packages: ['gcc-avr', 'binutils-avr', 'avr-libc'],
    isThere: () =>
      works(
        'avr-g++',
        ['-mmcu=atmega328p', '-x', 'c++', '-', '-o', '/dev/null'],
        '#include <avr/pgmspace.h>\nint main() { return 0; }\n',
      ),
  },
  {
    name: 'g++ with its sanitizers',
    packages: ['g++'],
    isThere: () =>
      works(
        'g++',
        ['-fsanitize=undefined,address', '-x', 'c++', '-', '-o', '/dev/null'],
        '#include <stdint.h>\nint main() { return 0; }\n',
      ),
  },
  {
    name: 'simavr with its headers',
    packages: ['gcc', 'simavr', 'libsimavr-dev', 'libelf-dev'],
    isThere: () =>
      works(
        'gcc',
        ['-x', 'c', '-', '-o', '/dev/null', '-lsimavr', '-lelf'],
        '#include <simavr/sim_avr.h>\n#include <simavr/sim_elf.h>\nint main(void) { return 0; }\n',
      ),
  },
  {
    name: 'glslangValidator',
    packages: ['glslang-tools'],
    isThere: () => works('glslangValidator', ['--version']),
  },
];

/**
 * Installs what is missing where that is possible: as root, on Debian and its kin.
 * @returns {string | null} one sentence that says what to install, or null if everything is there
 */
export function provideTools() {
  let missing = tools.filter(({ isThere }) => !isThere());
  if (missing.length > 0 && process.getuid?.() === 0 && works('apt-get', ['--version'])) {
    install(missing.flatMap(({ packages }) => packages));
    missing = missing.filter(({ isThere }) => !isThere());
  }
  if (missing.length === 0) return null;
  const names = missing.map(({ name }) => name).join(', ');
  const packages = missing.flatMap((tool) => tool.packages).join(' ');
  return `The tests need ${names}; on Debian: apt-get install ${packages}`;
}

function install(packages) {
  const env = { ...process.env, DEBIAN_FRONTEND: 'noninteractive' };
  const apt = (...args) => spawnSync('apt-get', args, { stdio: 'inherit', env });
  apt('update');
  apt('install', '-y', '--no-install-recommends', ...packages);
}
