/** A figure that changes with every frame cannot be read; five a second can. */
export const readableEveryMs = 200;
