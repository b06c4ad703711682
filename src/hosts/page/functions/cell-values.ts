import {
  ArrayValueObject,
  type BaseValueObject,
  BooleanValueObject,
  ErrorValueObject,
  type FunctionVariantType,
  NumberValueObject,
  StringValueObject,
} from "@univerjs/preset-sheets-core";
import type { ErrorType } from "@univerjs/preset-sheets-core";
import type { Answer, AnsweredCell } from "../../../../functions/elsewhere/answer";

export type Argument = string | number | boolean | null;

/** An argument as worksheet functions take them: a range as rows of cells, anything else as itself. */
export function argumentOf(variant: FunctionVariantType): Argument | Argument[][] {
  const value = variant as BaseValueObject;
  if (value.isArray()) return (value as ArrayValueObject).toValue() as Argument[][];
  return value.isNull() ? null : (value.getValue() as Argument);
}

/** An answer as the grid's formula engine takes it. Texts stay texts: the engine's own way would make `3-4` a date. */
export function valueOf(answer: Answer): BaseValueObject {
  if ("error" in answer) return ErrorValueObject.create(answer.error as ErrorType);
  const { rows } = answer;
  const columnCount = rows[0]?.length ?? 0;
  if (rows.length === 1 && columnCount === 1) return cellValue(rows[0]?.[0] ?? "");
  return ArrayValueObject.create({
    calculateValueList: rows.map((row) => row.map(cellValue)),
    rowCount: rows.length,
    columnCount,
    unitId: "",
    sheetId: "",
    row: -1,
    column: -1,
  });
}

function cellValue(cell: AnsweredCell): BaseValueObject {
  if (typeof cell === "number") return NumberValueObject.create(cell);
  if (typeof cell === "boolean") return BooleanValueObject.create(cell);
  if (typeof cell === "string") return StringValueObject.create(cell);
  return ErrorValueObject.create(cell.error as ErrorType);
}
