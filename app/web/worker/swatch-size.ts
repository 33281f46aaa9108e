/** How large a swatch is: columns, rows, and the clip that they show, twelve rows a second. */
export const swatchPixels = 24;
export const swatchRows = 96;
export const swatchMilliseconds = 8000;
