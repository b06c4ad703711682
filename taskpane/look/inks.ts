/** The custom properties that our own drawings are made of, in each setting of the page. */
export const LIGHT_INKS: Readonly<Record<string, string>> = {
  "--wl-ink": "#1A1A1A",
  "--wl-quiet": "#505050",
  "--wl-accent": "#0B4F6C",
  "--wl-paper": "#FFFFFF",
  "--wl-tint": "#F3F6F8",
  "--wl-pale": "#D5DDE3",
  "--wl-rule": "#D9D9D9",
};

export const DARK_INKS: Readonly<Record<string, string>> = {
  "--wl-ink": "#ECEAE4",
  "--wl-quiet": "#B4B2AC",
  "--wl-accent": "#8CC1D7",
  "--wl-paper": "#16191B",
  "--wl-tint": "#1F2427",
  "--wl-pale": "#3A444A",
  "--wl-rule": "#3A3F42",
};

/** System colours, where the user's own are forced upon the page. */
export const FORCED_INKS: Readonly<Record<string, string>> = {
  "--wl-ink": "CanvasText",
  "--wl-quiet": "CanvasText",
  "--wl-accent": "Highlight",
  "--wl-paper": "Canvas",
  "--wl-tint": "Canvas",
  "--wl-pale": "Canvas",
  "--wl-rule": "GrayText",
};
