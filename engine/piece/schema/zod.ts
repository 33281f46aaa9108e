/**
 * zod without generated code: the page forbids it, and even probing for it would be reported there.
 * Schemas take `z` from here, so that none is made before this is settled.
 */
import { z } from 'zod';

z.config({ jitless: true });

export { z };
