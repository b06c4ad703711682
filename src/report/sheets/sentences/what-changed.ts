import type { Table } from "../../../tables/table";
import { bridgeInWords } from "../../changed/bridges";
import type { Report } from "../../report";

export function whatChangedSentences(_: Table, { print }: Report): readonly string[] {
  const [first, ...more] = print.bridges.map(bridgeInWords);
  return first === undefined ? [] : [first, ...more.map((sentence) => `${sentence}.`)];
}
