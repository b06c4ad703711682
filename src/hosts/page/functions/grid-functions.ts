import {
  AsyncObject,
  BaseFunction,
  type BaseValueObject,
  type FunctionVariantType,
} from "@univerjs/preset-sheets-core";
import { FUNCTIONS, NAMESPACE } from "../../../../functions/registry";
import { type Answer, answerOf, messageOf } from "../../../../functions/elsewhere/answer";
import { argumentOf, valueOf } from "./cell-values";
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
