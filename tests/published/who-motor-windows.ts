/**
 * Windows of six gross motor skills, 1st to 99th percentile of the age in months at which children of the WHO
 * Multicentre Growth Reference Study first showed them. WHO MGRS Group (2006), Acta Paediatr Suppl 450:86-95,
 * doi 10.1111/j.1651-2227.2006.tb02379.x; read in the abstract.
 */
export const WHO_WINDOWS: readonly (readonly [skill: string, opensMonths: number, closesMonths: number])[] = [
  ["sitting without support", 3.8, 9.2],
  ["standing with assistance", 4.8, 11.4],
  ["hands-and-knees crawling", 5.2, 13.5],
  ["walking with assistance", 5.9, 13.7],
  ["standing alone", 6.9, 16.9],
  ["walking alone", 8.2, 17.6],
];
