import {
  ArrayValueObject,
  AsyncObject,
  BaseFunction,
  type BaseValueObject,
  BooleanValueObject,
  type ErrorType,
  ErrorValueObject,
  type FunctionVariantType,
  NumberValueObject,
  StringValueObject,
} from "@univerjs/preset-sheets-core";
import { type Answer, type AnsweredCell, answerOf, messageOf } from "../../../../functions/elsewhere/answer";
import { FUNCTIONS, NAMESPACE } from "../../../../functions/registry";
import type { CellMessages } from "./messages";
import { goesElsewhere } from "../../../../functions/elsewhere/worker-calls";

export interface FunctionSurroundings {
  readonly messages: CellMessages;
  /** Answers a large call away from the page's own thread. */
  readonly answerElsewhere: (name: string, args: readonly unknown[]) => Promise<Answer>;
}

type FunctionClass = new (name: string) => BaseFunction;

/** Every worksheet function of ours as the grid's formula engine takes them: a class and its name. */
export function gridFunctions(around: FunctionSurroundings): [FunctionClass, string][] {
  return [...FUNCTIONS.keys()].map((name) => [functionClass(name, around), `${NAMESPACE}.${name}`]);
}

function functionClass(name: string, around: FunctionSurroundings): FunctionClass {
  return class extends BaseFunction {
    override isAsync(): boolean {
      return true;
    }

    override calculate(...variants: FunctionVariantType[]): BaseValueObject {
      const args = variants.map(argumentOf);
      const at = [this.subUnitId ?? "", this.row, this.column] as const;
      const told = (answer: Answer): BaseValueObject => {
        around.messages.set(...at, messageOf(answer));
        return valueOf(answer);
      };
      if (!goesElsewhere(name, args)) return told(answerOf(name, args));
      return new AsyncObject(around.answerElsewhere(name, args).then(told)) as unknown as BaseValueObject;
    }
  };
}

type Argument = string | number | boolean | null;

/** An argument as worksheet functions take them: a range as rows of cells, anything else as itself. */
function argumentOf(variant: FunctionVariantType): Argument | Argument[][] {
  const value = variant as BaseValueObject;
  if (value.isArray()) return (value as ArrayValueObject).toValue() as Argument[][];
  return value.isNull() ? null : (value.getValue() as Argument);
}

/** An answer as the grid's formula engine takes it. Texts stay texts: the engine's own way would make `3-4` a date. */
function valueOf(answer: Answer): BaseValueObject {
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
