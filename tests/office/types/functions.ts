import { countArgument } from "../protocol/arguments";
import { Ref, serverType } from "../protocol/server-type";
import type { MemoryWorkbook } from "../workbook/memory-workbook";

const resultType = serverType<number>("FunctionResult", { scalars: { Value: { get: (value) => value } } });

/** Worksheet functions. The serials are those of ECMA-376 Part 1, 18.17.4.1. */
export const functionsType = serverType<MemoryWorkbook>("Functions", {
  methods: {
    Date: ({ dateSystem }, args) => {
      const [year = 0, month = 0, day = 0] = args.map((each) => countArgument(each, "Functions.Date"));
      const days = Date.UTC(year, month - 1, day) / 86_400_000;
      return new Ref(resultType, days + 25_569 - (dateSystem === 1904 ? 1462 : 0));
    },
  },
});
