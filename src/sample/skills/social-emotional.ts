import { cdc, type SampleSkill } from "./sources";

const AREA = "social-emotional";

export const SOCIAL_EMOTIONAL: readonly SampleSkill[] = [
  cdc(
    AREA,
    "smile-back",
    "Smiles when somebody smiles or talks",
    2,
    "Come close, smile slowly, and leave a long pause for the answer to you.",
  ),
  cdc(AREA, "smile-first", "Smiles first to win attention", 4, "Look up often; answer every smile you catch.", {
    follows: "smile-back",
  }),
  cdc(AREA, "laugh", "Laughs out loud", 6, "Find the one silly sound that makes you both laugh and use it sparingly.", {
    follows: "smile-first",
  }),
  cdc(
    AREA,
    "mirror",
    "Likes to look at the mirror",
    6,
    "Hold your baby at a mirror and greet together the two people in it.",
  ),
  cdc(
    AREA,
    "knows-own-people",
    "Can tell familiar people from others",
    6,
    "With your baby in your arms, name each person at the door before they come close.",
  ),
  cdc(AREA, "clap", "Claps hands", 15, "Clap along together to a song you like and leave out the last clap.", {
    losable: true,
    ages: [9.8, 1.9],
  }),
  cdc(
    AREA,
    "peek-game",
    "Enjoys a hide-and-find-my-face game",
    9,
    "Hide your face behind your hands and come out with a new smile each time.",
    { follows: "laugh", losable: true },
  ),
  cdc(
    AREA,
    "miss-parent",
    "Minds when a parent goes away",
    9,
    "Say a short goodbye every time you go, and come back with the same words.",
    { follows: "knows-own-people" },
  ),
  cdc(AREA, "hug-toy", "Cuddles a doll or soft toy", 15, "Rock a large soft bear together and sing to it.", {
    losable: true,
  }),
  cdc(
    AREA,
    "point-share",
    "Points at something to share the joy of it",
    18,
    "Stop and look whenever a finger goes up, and say what you see.",
    { losable: true },
  ),
  cdc(
    AREA,
    "help-dress",
    "Helps with dressing by offering an arm or a foot",
    18,
    "As you dress your child, hold the sleeve open, count to three and wait for the arm.",
  ),
  cdc(
    AREA,
    "play-beside",
    "Is happy near other children at play, and joins in at times",
    30,
    "Invite one child, bring out two of every large toy, and sit down near them yourself.",
  ),
  cdc(
    AREA,
    "join-play",
    "Goes to other children and joins their play",
    36,
    "At the park, go up to another child together and say what the two could play.",
    { follows: "play-beside" },
  ),
];
