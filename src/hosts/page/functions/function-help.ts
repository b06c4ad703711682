import { BooleanNumber } from "@univerjs/core";
import { FunctionType, type IFunctionInfo } from "@univerjs/preset-sheets-core";
import { NAMESPACE } from "../../../../functions/registry";

interface FunctionHelp {
  readonly name: string;
  readonly description: string;
  readonly parameters: readonly { readonly name: string; readonly detail: string; readonly optional: boolean }[];
}

/** Put in at build time by `helpOfFunctions`. */
declare const FUNCTION_HELP: readonly FunctionHelp[];

/** What the grid shows while someone types a function of ours: the words of its doc comment, as in Excel. */
export function functionHelp(): IFunctionInfo[] {
  return FUNCTION_HELP.map(({ name, description, parameters }) => ({
    functionName: `${NAMESPACE}.${name}`,
    functionType: FunctionType.User,
    description,
    abstract: description,
    functionParameter: parameters.map((parameter) => ({
      name: parameter.name,
      detail: parameter.detail,
      example: "",
      require: parameter.optional ? BooleanNumber.FALSE : BooleanNumber.TRUE,
      repeat: BooleanNumber.FALSE,
    })),
  }));
}
