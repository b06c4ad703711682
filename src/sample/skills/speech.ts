import { around, cdc, type SampleSkill } from "./sources";

const AREA = "speech";

export const SPEECH: readonly SampleSkill[] = [
  cdc(AREA, "coo", "Makes long vowel sounds", 4, "Sing the same sound back and let your baby have the last word."),
  cdc(AREA, "squeal", "Squeals", 6, "Answer in the same high voice, then whisper, and see what comes back."),
  around(AREA, "one-syllable", "Repeats one syllable", 6, "Say ba, ba, ba at nappy time and wait with an open face.", {
    follows: "coo",
  }),
  around(AREA, "own-name", "Turns to the own name", 6, "Call the name once from the side and smile at every turn."),
  cdc(
    AREA,
    "syllable-strings",
    "Strings the same syllable together in long runs",
    9,
    "Have a pretend conversation on the phone in nothing but babble.",
    {
      follows: "one-syllable",
    },
  ),
  cdc(AREA, "wave", "Waves goodbye", 12, "Wave to the bus, the cat and the moon, always with the word."),
  cdc(
    AREA,
    "parent-name",
    "Uses a name of its own for a parent",
    12,
    "Play who is that with photographs on the fridge.",
  ),
  cdc(
    AREA,
    "first-words",
    "Tries a word or two beyond the names for parents",
    15,
    "Name what is in the hand right now rather than asking for words.",
  ),
  cdc(
    AREA,
    "more-words",
    "Tries at least three words beyond the names for parents",
    18,
    "Offer two fruits, name both, and wait for a choice.",
  ),
  cdc(
    AREA,
    "spoken-request",
    "Does what is asked in words alone",
    18,
    "Ask for help with small things: bring me the sock, please.",
  ),
  cdc(AREA, "two-words", "Puts two words together", 24, "Add one word to whatever is said: ball becomes big ball."),
  cdc(
    AREA,
    "about-fifty",
    "Has some fifty words",
    30,
    "Read the same book often and stop before the word that is loved best.",
  ),
];
