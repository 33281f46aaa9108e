/** Pattern sources are imported as text; see `glslAsText` in vite.config.ts and app/cli/start.mjs. */
declare module '*.glsl' {
  const source: string;
  export default source;
}
/** Parts of the sketch that stand as C++ text in codegen/. */
declare module '*.inc.cpp' {
  const source: string;
  export default source;
}
