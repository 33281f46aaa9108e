/** Version of the tool, as sketches state it; a test holds it against package.json. */
export const toolVersion = '0.1.0';
