import type { Table } from "../../../tables/table";
import { bridgeInWords, bridgesOf } from "../../changed/bridges";

export function whatChangedSentences(table: Table): readonly string[] {
  const [first, ...more] = bridgesOf(table).map(bridgeInWords);
  return first === undefined ? [] : [first, ...more.map((sentence) => `${sentence}.`)];
}
