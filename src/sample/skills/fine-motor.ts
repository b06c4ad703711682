import { around, cdc, type SampleSkill } from "./sources";

const AREA = "fine motor";

export const FINE_MOTOR: readonly SampleSkill[] = [
  cdc(
    AREA,
    "open-hands",
    "Opens the fists now and then",
    2,
    "Stroke the back of the hand gently and lay your finger in the palm as it opens.",
  ),
  cdc(
    AREA,
    "hands-to-mouth",
    "Hands find their way into the mouth",
    4,
    "Leave hands free of mittens during quiet time and let them be explored.",
  ),
  around(
    AREA,
    "reach-sitting",
    "Reaches for things while sitting",
    6,
    "While your baby sits on your lap, hold a spoon a hand's width away and wait.",
  ),
  around(
    AREA,
    "three-finger-grasp",
    "Takes hold with thumb, index and middle finger",
    6,
    "Offer a block or a wooden ring, one at a time, and admire how it is held.",
  ),
  cdc(
    AREA,
    "hand-to-hand",
    "Passes a thing from one hand to the other",
    9,
    "When one hand is full, offer a second toy to the same hand.",
  ),
  cdc(
    AREA,
    "rake",
    "Sweeps small pieces of food close with the fingers",
    9,
    "Scatter a few soft bits of food on the tray and take your time over the meal.",
    {
      ageBasis: "chronological",
    },
  ),
  cdc(
    AREA,
    "pinch",
    "Picks up tiny bits between thumb and index finger",
    12,
    "Share soft peas one by one, always sitting together.",
    { follows: "rake" },
  ),
  cdc(
    AREA,
    "finger-feed",
    "Eats some food with the fingers",
    15,
    "Put a few pieces on your own plate too and eat along.",
    { ageBasis: "chronological" },
  ),
  cdc(AREA, "scribble", "Makes marks with a crayon", 18, "Tape a big sheet to the floor and draw beside each other."),
  cdc(
    AREA,
    "spoon",
    "Gets food from the bowl to the mouth on a spoon",
    24,
    "Keep a second spoon for yourself and let thick porridge be the practice food.",
    {
      follows: "finger-feed",
      ageBasis: "chronological",
    },
  ),
  cdc(
    AREA,
    "twist",
    "Twists lids or turns knobs",
    30,
    "Hide a dried apricot in a jar with a loose lid and wonder aloud how to get it.",
  ),
];
