import { around, between, cdc, type SampleSkill } from "./sources";

const AREA = "social-emotional";

export const SOCIAL_EMOTIONAL: readonly SampleSkill[] = [
  cdc(
    AREA,
    "smile-back",
    "Smiles when somebody smiles or talks",
    2,
    "Come close, smile slowly, and leave a long pause for the answer.",
  ),
  cdc(AREA, "smile-first", "Smiles first to win attention", 4, "Look up often; answer every smile you catch."),
  cdc(AREA, "laugh", "Laughs out loud", 6, "Find the one silly sound that always works and use it sparingly."),
  around(
    AREA,
    "mirror",
    "Shows interest in the mirror",
    6,
    "Stand at a mirror together and greet the two people in it.",
  ),
  cdc(
    AREA,
    "knows-own-people",
    "Can tell familiar people from others",
    6,
    "Name each person at the door before they come close.",
  ),
  between(AREA, "clap", "Claps hands", [6, 9], "Clap along to a song you like and leave out the last clap."),
  cdc(
    AREA,
    "peek-game",
    "Enjoys a hide-and-find-my-face game",
    9,
    "Hide behind a cloth and come out in a new place each time.",
  ),
  cdc(
    AREA,
    "miss-parent",
    "Minds when a parent goes away",
    9,
    "Say a short goodbye every time, and come back with the same words.",
  ),
  cdc(AREA, "hug-toy", "Cuddles a doll or soft toy", 15, "Put teddy to bed together and tuck both in."),
  cdc(
    AREA,
    "point-share",
    "Points at something to share the joy of it",
    18,
    "Stop and look whenever a finger goes up, and say what you see.",
  ),
  cdc(
    AREA,
    "help-dress",
    "Helps with dressing by offering an arm or a foot",
    18,
    "Hold the sleeve open, count to three and wait for the arm.",
  ),
  cdc(
    AREA,
    "play-beside",
    "Is happy near other children at play, and joins in at times",
    30,
    "Invite one child, bring out two of everything, and sit nearby.",
  ),
];
