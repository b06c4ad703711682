import { cdc, type SampleSkill } from "./sources";

const AREA = "cognitive";

export const COGNITIVE: readonly SampleSkill[] = [
  cdc(
    AREA,
    "study-toy",
    "Studies a toy for a few moments",
    2,
    "Hold one bold toy still at arm's length and let it be looked at.",
  ),
  cdc(
    AREA,
    "look-after-drop",
    "Looks for a thing that fell out of view",
    9,
    "Drop a spoon on purpose, say oh dear, and look for it together.",
  ),
  cdc(
    AREA,
    "bang-two",
    "Bangs one thing against another",
    9,
    "Give out two wooden spoons and play in the band yourself.",
  ),
  cdc(
    AREA,
    "fill-cup",
    "Drops things into a container",
    12,
    "Offer a tin and clothes pegs; the noise is half the fun.",
  ),
  cdc(
    AREA,
    "find-hidden",
    "Finds a toy after watching it being covered",
    12,
    "Cover a toy with a cloth, leave a corner showing, then hide all of it.",
  ),
  cdc(
    AREA,
    "stack-two",
    "Puts one block on another",
    15,
    "Build beside your child and let every tower fall with a cheer.",
  ),
  cdc(AREA, "copy-chore", "Copies housework", 18, "Hand over a dry cloth while you wipe the table."),
  cdc(
    AREA,
    "two-toys",
    "Uses several toys together in one game",
    24,
    "Set a toy cup by the doll and ask what the doll would like.",
  ),
  cdc(
    AREA,
    "pretend",
    "Uses one thing as if it were another",
    30,
    "Turn a block into a telephone and ring each other.",
  ),
  cdc(
    AREA,
    "two-part-request",
    "Carries out a request of two parts",
    30,
    "Ask for two things on one errand: fetch the shoes and shut the door.",
  ),
];
