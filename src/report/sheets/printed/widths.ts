/** Twelve equal columns over a portrait page, and over a landscape one. */
export const PORTRAIT = Array.from({ length: 12 }, () => 7.6);
export const LANDSCAPE = Array.from({ length: 12 }, () => 10.4);
