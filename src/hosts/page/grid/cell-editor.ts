/** Where the grid takes what is typed into its cells. */
export const CELL_EDITOR = "[contenteditable=true][id$=DOCS_NORMAL]";
