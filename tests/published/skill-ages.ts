/**
 * 1st and 99th percentile of the age at which six motor skills came, months.
 * Source: WHO Multicentre Growth Reference Study Group (2006), Acta Paediatr Suppl 450:86-95 (read). n = 816; 4.3% never crawled.
 */
export const WHO_WINDOWS: Readonly<Record<string, readonly [first: number, ninetyNinth: number]>> = {
  "sit-alone": [3.8, 9.2],
  "stand-held": [4.8, 11.4],
  crawl: [5.2, 13.5],
  "walk-held": [5.9, 13.7],
  "stand-alone": [6.9, 16.9],
  "walk-alone": [8.2, 17.6],
};

/**
 * Ages by which 75% or more of children do it, months.
 * Source: CDC 2022, with Zubler et al. (2022), Pediatrics 149(3):e2021052138 (read). The keys are our own.
 */
export const CDC_AGES: Readonly<Record<number, readonly string[]>> = {
  2: ["head-up", "open-hands", "smile-back", "study-toy", "loud-sound", "watch-person"],
  4: ["elbow-prop", "hands-to-mouth", "smile-first", "coo", "watch-hands", "turn-to-voice"],
  6: ["straight-arms", "prop-sit", "laugh", "knows-own-people", "squeal", "mouth-things"],
  9: [
    "get-to-sit",
    "hand-to-hand",
    "rake",
    "peek-game",
    "miss-parent",
    "look-after-drop",
    "bang-two",
    "syllable-strings",
  ],
  12: ["pull-up", "pinch", "fill-cup", "find-hidden", "wave", "parent-name"],
  15: ["finger-feed", "hug-toy", "stack-two", "first-words"],
  18: ["climb-seat", "scribble", "point-share", "help-dress", "copy-chore", "more-words", "spoken-request"],
  24: ["run", "spoon", "two-toys", "two-words"],
  30: ["jump", "twist", "play-beside", "pretend", "two-part-request", "about-fifty"],
};

/** Months in which most children begin, or around which one looks for the skill. Common practice, no source. */
export const COMMON_PRACTICE: Readonly<Record<string, readonly [opens: number | null, closes: number]>> = {
  clap: [6, 9],
  "roll-both": [null, 6],
  "reach-sitting": [null, 6],
  "three-finger-grasp": [null, 6],
  "one-syllable": [null, 6],
  "own-name": [null, 6],
  mirror: [null, 6],
};
