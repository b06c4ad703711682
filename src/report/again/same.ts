/** What is said of a report that was made again without a difference. */
export const MADE_AGAIN_THE_SAME = "Made again from the same records: the same, to the byte.";
