/**
 * Limits of a difference of two shares, method 10. Newcombe (1998), Stat Med 17:873-890, table II. `printed`: read in public test
 * code that quotes the table. `computed`: the formula in R 4.2.2. `counts` holds count 1, of 1, count 2, of 2.
 */
export const newcombe1998b = [
  {
    name: "a",
    counts: [56, 70, 48, 80],
    difference: 0.2,
    printed: [0.0524, 0.3339],
    computed: [0.0524314724023649, 0.333872654036906],
  },
  {
    name: "b",
    counts: [9, 10, 3, 10],
    difference: 0.6,
    printed: [0.1705, 0.809],
    computed: [0.170522723934503, 0.809017973535488],
  },
  {
    name: "c",
    counts: [6, 7, 2, 7],
    difference: 0.571428571428571,
    printed: [0.0582, 0.8062],
    computed: [0.0582279274823123, 0.806249637524228],
  },
  {
    name: "d",
    counts: [5, 56, 0, 29],
    difference: 0.0892857142857143,
    printed: [-0.0381, 0.1926],
    computed: [-0.0381371479035369, 0.192560013855112],
  },
  {
    name: "e",
    counts: [0, 10, 0, 20],
    difference: 0,
    printed: [-0.1611, 0.2775],
    computed: [-0.161125158052819, 0.277532799862889],
  },
  {
    name: "f",
    counts: [0, 10, 0, 10],
    difference: 0,
    printed: [-0.2775, 0.2775],
    computed: [-0.277532799862889, 0.277532799862889],
  },
  { name: "g", counts: [10, 10, 0, 20], difference: 1, printed: [0.6791, 1], computed: [0.679086037141915, 1] },
  { name: "h", counts: [10, 10, 0, 10], difference: 1, printed: [0.6075, 1], computed: [0.607509350430524, 1] },
] as const;
