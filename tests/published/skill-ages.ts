/**
 * 1st and 99th percentile of the age at which six motor skills came, months.
 * Source: WHO Multicentre Growth Reference Study Group (2006), Acta Paediatr Suppl 450:86-95, abstract, "Results", page 86
 * (read). n = 816; 4.3% never crawled.
 */
export const WHO_WINDOWS: Readonly<Record<string, readonly [first: number, ninetyNinth: number]>> = {
  "sit-alone": [3.8, 9.2],
  "stand-held": [4.8, 11.4],
  crawl: [5.2, 13.5],
  "walk-held": [5.9, 13.7],
  "stand-alone": [6.9, 16.9],
  "walk-alone": [8.2, 17.6],
};

/** What the published list says of one of our skills, in short and in our words. */
export interface PublishedAge {
  /** The checklist that the skill stands on: the age by which 75% or more of children do it, months. */
  readonly months: number;
  /** The checklist's own heading. */
  readonly listedUnder: "social" | "language" | "cognitive" | "movement";
  readonly said: string;
}

/**
 * Ages by which 75% or more of children do it, months, one entry per skill of ours that the list has.
 * Source: CDC, Learn the Signs. Act Early., checklists of 2022 (public domain), the page of each age, published with Zubler et
 * al. (2022), Pediatrics 149(3):e2021052138. Read: the pages of 2 to 36 months on sites that reproduce them; the page of 18
 * months on the agency's own site, three of its four headings. Not read: the tables of the article.
 */
export const CDC_AGES: Readonly<Record<string, PublishedAge>> = {
  "head-up": { months: 2, listedUnder: "movement", said: "holds the head up on the tummy" },
  "open-hands": { months: 2, listedUnder: "movement", said: "opens the hands briefly" },
  "smile-back": { months: 2, listedUnder: "social", said: "smiles when talked or smiled to" },
  "study-toy": { months: 2, listedUnder: "cognitive", said: "looks at a toy for several seconds" },
  "loud-sound": { months: 2, listedUnder: "language", said: "reacts to loud sounds" },
  "watch-person": { months: 2, listedUnder: "cognitive", said: "watches a person who moves" },
  "elbow-prop": { months: 4, listedUnder: "movement", said: "pushes up on the forearms" },
  "hands-to-mouth": { months: 4, listedUnder: "movement", said: "brings the hands to the mouth" },
  "smile-first": { months: 4, listedUnder: "social", said: "smiles to get attention" },
  coo: { months: 4, listedUnder: "language", said: "makes long vowel sounds" },
  "watch-hands": { months: 4, listedUnder: "cognitive", said: "looks at the hands with interest" },
  "turn-to-voice": { months: 4, listedUnder: "language", said: "turns the head to a voice" },
  "straight-arms": { months: 6, listedUnder: "movement", said: "pushes up with straight arms" },
  "prop-sit": { months: 6, listedUnder: "movement", said: "leans on the hands when sitting" },
  "reach-toy": { months: 6, listedUnder: "cognitive", said: "reaches to grab a toy" },
  laugh: { months: 6, listedUnder: "social", said: "laughs" },
  mirror: { months: 6, listedUnder: "social", said: "likes to look in a mirror" },
  "knows-own-people": { months: 6, listedUnder: "social", said: "knows familiar people" },
  squeal: { months: 6, listedUnder: "language", said: "squeals" },
  "mouth-things": { months: 6, listedUnder: "cognitive", said: "explores things with the mouth" },
  "get-to-sit": { months: 9, listedUnder: "movement", said: "gets to sitting without help" },
  "hand-to-hand": { months: 9, listedUnder: "movement", said: "moves things from hand to hand" },
  rake: { months: 9, listedUnder: "movement", said: "rakes food close with the fingers" },
  "peek-game": { months: 9, listedUnder: "social", said: "smiles or laughs at the hiding-face game" },
  "miss-parent": { months: 9, listedUnder: "social", said: "reacts when the parent leaves" },
  "own-name": { months: 9, listedUnder: "social", said: "looks when called by name" },
  "look-after-drop": { months: 9, listedUnder: "cognitive", said: "looks for things dropped out of sight" },
  "bang-two": { months: 9, listedUnder: "cognitive", said: "bangs two things together" },
  "syllable-strings": { months: 9, listedUnder: "language", said: "makes long strings of one syllable" },
  "pull-up": { months: 12, listedUnder: "movement", said: "pulls up to stand" },
  pinch: { months: 12, listedUnder: "movement", said: "picks up bits between thumb and pointer finger" },
  "fill-cup": { months: 12, listedUnder: "cognitive", said: "puts something in a container" },
  "find-hidden": { months: 12, listedUnder: "cognitive", said: "looks for what was hidden in view" },
  wave: { months: 12, listedUnder: "language", said: "waves goodbye" },
  "parent-name": { months: 12, listedUnder: "language", said: "has a name for a parent" },
  clap: { months: 15, listedUnder: "social", said: "claps when excited" },
  "finger-feed": { months: 15, listedUnder: "movement", said: "feeds itself some food with the fingers" },
  "hug-toy": { months: 15, listedUnder: "social", said: "hugs a doll or other toy" },
  "stack-two": { months: 15, listedUnder: "cognitive", said: "stacks two small things" },
  "first-words": { months: 15, listedUnder: "language", said: "tries one or two words beside those for parents" },
  "climb-seat": { months: 18, listedUnder: "movement", said: "climbs on and off a couch without help" },
  scribble: { months: 18, listedUnder: "movement", said: "scribbles" },
  "point-share": { months: 18, listedUnder: "social", said: "points to show something" },
  "help-dress": { months: 18, listedUnder: "social", said: "helps with dressing" },
  "copy-chore": { months: 18, listedUnder: "cognitive", said: "copies chores" },
  "more-words": { months: 18, listedUnder: "language", said: "tries three words or more beside those for parents" },
  "spoken-request": { months: 18, listedUnder: "language", said: "follows a one-step request without a gesture" },
  run: { months: 24, listedUnder: "movement", said: "runs" },
  spoon: { months: 24, listedUnder: "movement", said: "eats with a spoon" },
  "two-toys": { months: 24, listedUnder: "cognitive", said: "plays with more than one toy at a time" },
  "two-words": { months: 24, listedUnder: "language", said: "says two words together" },
  jump: { months: 30, listedUnder: "movement", said: "jumps with both feet" },
  twist: { months: 30, listedUnder: "movement", said: "twists knobs or lids" },
  "play-beside": { months: 30, listedUnder: "social", said: "plays next to others and at times with them" },
  pretend: { months: 30, listedUnder: "cognitive", said: "uses things to pretend" },
  "two-part-request": { months: 30, listedUnder: "cognitive", said: "follows a request of two steps" },
  "about-fifty": { months: 30, listedUnder: "language", said: "says about fifty words" },
  "join-play": { months: 36, listedUnder: "social", said: "notices other children and joins them" },
  "draw-circle": { months: 36, listedUnder: "cognitive", said: "draws a circle when shown" },
  "talk-turns": { months: 36, listedUnder: "language", said: "talks with two turns or more" },
  fork: { months: 36, listedUnder: "movement", said: "uses a fork" },
};

/**
 * Months around which people look for the skill. Common practice, no source: none of the published lists above has it.
 * From memory, older lists put turning to the name and repeated syllables at 6 months too; the list of 2022 has both at 9.
 */
export const COMMON_PRACTICE: Readonly<Record<string, number>> = {
  "roll-both": 6,
  "three-finger-grasp": 6,
  "one-syllable": 6,
};
