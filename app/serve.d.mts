/** Serves a folder to this machine only, and gives the address of its page. */
export function servePage(folder: string, port: number | null): Promise<string>;
